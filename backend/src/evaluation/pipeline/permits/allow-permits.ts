import { deriveMemoryOf } from '../../derive/memory/memory-of-state';
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
  const first = open.reduce((best, permit) => (permit.openedMs < best.openedMs ? permit : best), open[0] ?? nobody);
  openPermits.count[unitIndex] = open.length;
  const inTime = open.filter(({ untilMs }) => !(nowMs >= untilMs));
  openPermits.expectedM3PerS[unitIndex] = inTime.reduce((sum, permit) => sum + permit.expectedInLeakM3PerS, 0);
  deriveMemoryOf(site, state)?.gas.setPermits(unitIndex, openPermits.expectedM3PerS[unitIndex]);
  openPermits.baselineM3PerS[unitIndex] = first.baseline.gasLoadM3PerS ?? Number.NaN;
  openPermits.wholeLoop[unitIndex] = open.some(({ branch }) => branch === null) ? 1 : 0;
  openPermits.dueMs[unitIndex] = open.length === 0 ? Number.NaN : Math.min(...open.map(({ untilMs }) => untilMs));
  openPermits.setBranches(
    unitIndex,
    unit.branches.flatMap(({ id }, i) => (open.some(({ branch }) => branch === id) ? [i] : [])),
  );
}

const nobody = { openedMs: Number.NaN, baseline: { gasLoadM3PerS: null } } as const;
