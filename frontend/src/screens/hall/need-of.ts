import type { LoopLine } from '@ebbline/shared/contract/live-feed';
import { isGone, needsAcknowledgement } from '../../components/alarm-facts';
import { isOld } from '../../components/freshness';
import { isExplained } from '../../text/is-missing';
import { isTooSmall, lowerWallFigure } from '../../components/strip-geometry';

/** How far a loop needs somebody, the most urgent first. */
export const needs = ['person', 'aside', 'margin', 'unknown', 'work', 'calm'] as const;
export type Need = (typeof needs)[number];

export type NeedLine = Pick<
  LoopLine,
  'worst' | 'ventedNotProtected' | 'openPermits' | 'mode' | 'modeKnown' | 'pressureWindow' | 'setAsideHolding'
>;

const tooSmall = ({ pressureWindow: window }: NeedLine): boolean =>
  isTooSmall(window.vacuumMargin, window.vacuumMarginGuardPa) ||
  isTooSmall(lowerWallFigure(window), window.lowerWallGuardPa);

/**
 * aside: what a person has set aside holds; margin: a gap may lie below its guard though no alarm says so yet; work: it is not as
 * usual by plan, or its mode is not known. What the margin would be if the flow stopped is left to its alarm and its figure: beside
 * a guard it would turn rows and words about each second.
 */
export function needOf(line: NeedLine): Need {
  if (line.worst !== null) return 'person';
  if ((line.setAsideHolding ?? 0) > 0) return 'aside';
  if (line.ventedNotProtected) return 'work';
  if (isOld(line.pressureWindow.vacuumMargin)) return 'unknown';
  if (tooSmall(line)) return 'margin';
  const wall = lowerWallFigure(line.pressureWindow);
  // Of a unit that has no such wall the figure says why it is not there.
  if (isOld(wall) && !isExplained(wall)) return 'unknown';
  return line.openPermits > 0 || !line.modeKnown || line.mode !== 'running' ? 'work' : 'calm';
}

/** Those that most need somebody first; those that need alike keep their order. */
export function byNeed<Line extends NeedLine>(lines: readonly Line[]): readonly Line[] {
  const compare = (a: Line, b: Line): number =>
    needs.indexOf(needOf(a)) - needs.indexOf(needOf(b)) || compareWorst(a.worst, b.worst);
  return [...lines].sort(compare);
}

function compareWorst(a: LoopLine['worst'], b: LoopLine['worst']): number {
  if (a === null || b === null) return 0;
  return (
    a.priority - b.priority ||
    Number(isGone(a.state)) - Number(isGone(b.state)) ||
    Number(needsAcknowledgement(b.state)) - Number(needsAcknowledgement(a.state)) ||
    Date.parse(a.since) - Date.parse(b.since)
  );
}
