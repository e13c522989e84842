import type { LoopLine } from '@ebbline/shared/contract/live-feed';
import { lowerWallFigure } from '../../components/strip-geometry';
import { formatQuantity, inWords } from '../../text/format-quantity';
import { sayHeldAside } from '../../text/say-held-aside';
import { lowerWallNouns, modeWords } from '../../text/words';

/** A loop in a few words: what it needs, or what is out of the ordinary, or the wall that binds on the left and how far it is. */
export function smallWords(
  line: Pick<
    LoopLine,
    'worst' | 'moreAlarms' | 'mode' | 'modeKnown' | 'openPermits' | 'pressureWindow' | 'setAsideHolding'
  >,
): string {
  if (line.worst !== null)
    return line.moreAlarms === 0 ? line.worst.title : `${line.worst.title} and ${line.moreAlarms} more`;
  const aside = line.setAsideHolding ?? 0;
  if (aside > 0) return sayHeldAside(aside);
  if (!line.modeKnown) return 'mode not known, judged as running';
  if (line.openPermits > 0) return line.openPermits === 1 ? 'a permit is open' : `${line.openPermits} permits are open`;
  if (line.mode !== 'running') return modeWords[line.mode];
  const { lowerWallKind } = line.pressureWindow;
  const margin = lowerWallFigure(line.pressureWindow).value;
  if (lowerWallKind === null || margin === null) return '';
  return `${inWords(formatQuantity(margin, 'pressureDifference', { finer: -1, keepsSign: true }))} to ${lowerWallNouns[lowerWallKind]}`;
}
