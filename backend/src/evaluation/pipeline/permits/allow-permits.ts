import { deriveMemoryOf } from '../../derive/memory/memory-of-state';
import type { PermitRecord } from '../permit-record';
import type { PipelineState } from '../pipeline-state';

/**
 * Works out anew what the open permits of a unit allow at a time. One that is overdue is still open, and the work on its branch
 * with it, but nobody has allowed the air that still comes in: it counts no more.
 */
export function allowPermits(
  { openPermits, permits, site, state }: PipelineState,
  unitId: string,
  nowMs: number,
): void {
  const unitIndex = site.units.findIndex(({ id }) => id === unitId);
  const unit = site.units[unitIndex];
  if (unit === undefined) return;
  const open = [...permits.values()].filter((permit) => permit.unit === unitId);
  openPermits.count[unitIndex] = open.length;
  const inTime = open.filter(({ untilMs }) => !(nowMs >= untilMs));
  openPermits.expectedM3PerS[unitIndex] = inTime.reduce((sum, permit) => sum + permit.expectedInLeakM3PerS, 0);
  deriveMemoryOf(site, state)?.gas.setPermits(unitIndex, openPermits.expectedM3PerS[unitIndex]);
  openPermits.baselineM3PerS[unitIndex] = gasBeforeWork(open);
  const ofWholeLoop = open.filter(({ branch }) => branch === null);
  openPermits.wholeLoop[unitIndex] = ofWholeLoop.length > 0 ? 1 : 0;
  openPermits.wholeLoopDueMs[unitIndex] = firstDue(ofWholeLoop);
  openPermits.dueMs[unitIndex] = firstDue(open);
  openPermits.setBranches(
    unitIndex,
    unit.branches.flatMap(({ id }, i) => (open.some(({ branch }) => branch === id) ? [i] : [])),
  );
}

/** NaN where none is open. */
const firstDue = (open: readonly PermitRecord[]): number =>
  open.length === 0 ? Number.NaN : Math.min(...open.map(({ untilMs }) => untilMs));

/** What stood before all of the work, free m³/s; NaN where none is open or nothing was known when the first began. */
function gasBeforeWork(open: readonly PermitRecord[]): number {
  const known = open.flatMap(({ baseline: { gasLoadM3PerS } }) => (gasLoadM3PerS === null ? [] : [gasLoadM3PerS]));
  return known.length < open.length || open.length === 0 ? Number.NaN : Math.min(...known);
}
