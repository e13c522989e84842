import type { LoopLine } from '@ebbline/shared/contract/live-feed';
import { modes } from '@ebbline/shared/contract/http-api';
import { modeWords } from '../../text/words';

type ModeLine = Pick<LoopLine, 'mode' | 'modeKnown' | 'openPermits'>;

/** True where a unit is known to run, by plan open or not. */
export const isRunning = ({ mode, modeKnown }: ModeLine): boolean => modeKnown && mode === 'running';

const notKnown = 'in a mode not known, judged as running';
const underPermit = 'under an open permit';
/** What protects nothing first. */
const inOrder: readonly string[] = [
  ...new Set([modeWords.vented, ...modes.map((mode) => modeWords[mode])]),
  notKnown,
  underPermit,
];

function wordsOf(line: ModeLine): string | null {
  if (!line.modeKnown) return notKnown;
  if (line.mode !== 'running') return modeWords[line.mode];
  return line.openPermits > 0 ? underPermit : null;
}

/** How many units are in which mode that is not the usual one, each after a semicolon; empty where all run as usual. */
export function sayModes(lines: readonly ModeLine[]): string {
  const words = lines.map(wordsOf);
  return inOrder
    .map((one) => {
      const count = words.filter((own) => own === one).length;
      return count === 0 ? '' : `; ${count === 1 ? '1 unit' : `${count} units`} ${one}`;
    })
    .join('');
}
