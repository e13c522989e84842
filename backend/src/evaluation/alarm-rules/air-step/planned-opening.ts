import type { Finding, UnitContext } from '../judge-context';

/**
 * The step is the opening that an open permit is for: it shows on the permit's branch, or on none, and all that would then come in
 * since before the work is not above what the permits expect by more than the limit. A second opening goes beyond that,
 * and one on another branch was never planned. With alternating tanks each step is looked at by itself: a second opening on the
 * permit's branch that is no larger than it expects is not told apart.
 */
export function isPlanned(context: UnitContext, { value, limit }: Finding): boolean {
  const { air, permits, unit, unitIndex } = context;
  if (permits.count[unitIndex] === 0) return false;
  const named = air.namedBranch[unitIndex] as number;
  if (named >= 0 && permits.wholeLoop[unitIndex] === 0 && !permits.branchesOf(unitIndex).includes(named)) return false;
  const expected = permits.expectedM3PerS[unitIndex] as number;
  if (unit.shape === 'b') return value <= byPressureAlone * expected + limit;
  const before = (air.gasBefore[unitIndex] as number) - (permits.baselineM3PerS[unitIndex] as number);
  const cameBefore = Number.isNaN(before) ? 0 : Math.max(0, before);
  return cameBefore + value <= expected + limit;
}

/**
 * With alternating tanks gas load goes up and down with each change-over and says nothing of before; and what a branch's pressure says
 * of its opening may be half as much again. Own rule.
 */
const byPressureAlone = 1.5;
