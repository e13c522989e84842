import { dayStartMs } from '@ebbline/shared/clock/days-from-civil';
import type { Holder } from './compiled-site';
import type { MatchedPair } from './compiled-unit';
import type { MergedUnit } from './merge-templates';
import type { FaultList } from './site-fault';

const star = 'branch.*.';

/** Pairs of thermometers whose errors go together, by record. A star stands for every branch that has the point. */
export function compileMatchedPairs(
  { unit, at }: MergedUnit,
  holder: Holder,
  faults: FaultList,
): readonly MatchedPair[] {
  return (unit.matchedPairs ?? []).flatMap(({ points, correlation, by, on }, i) => {
    const fault = (key: string, message: string): void => faults.add(at('matchedPairs', i, key), message);
    if (by === undefined) fault('by', 'is missing; say who calibrated the pair, as a role or a name');
    if (on === undefined) fault('on', 'is missing; say on which day the pair was calibrated, such as 2026-03-14');
    else if (Number.isNaN(dayStartMs(on)))
      fault('on', 'expected a day of the calendar as year-month-day, such as 2026-03-14');
    if (!(correlation >= 0 && correlation < 1))
      fault('correlation', 'expected 0 or more, below 1; 0.8 is usual of one bath');
    const [one, other] = points.map((point) => slotsOf(point, unit.branches, holder));
    points.forEach((point, k) => {
      if (!/(^|\.)temperature$/.test(point))
        fault('points', `${point} is no temperature; a matched pair is of thermometers`);
      else if (([one, other][k] ?? []).length === 0)
        fault('points', `${point} is not measured at this unit; take the pair out`);
    });
    if (points[0] === points[1]) fault('points', 'name the same point twice; a pair has two');
    return (one ?? []).flatMap((slot) => (other ?? []).map((mate) => ({ slot, mate, correlation })));
  });
}

function slotsOf(point: string, branches: MergedUnit['unit']['branches'], { slotOf }: Holder): readonly number[] {
  const ids = point.startsWith(star)
    ? Object.keys(branches ?? {}).map((id) => `branch.${id}.${point.slice(star.length)}`)
    : [point];
  return ids.flatMap((id) => slotOf.get(id) ?? []);
}
