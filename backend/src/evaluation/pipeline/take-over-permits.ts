import { copyColumns } from './copy-columns';
import type { PermitRecord } from './permit-record';
import type { PipelineState } from './pipeline-state';
import type { SiteMaps } from './site-maps';

/** Permits stay open where their unit and branch are still there; the others are closed, and the journal says why. */
export function takeOverPermits(before: PipelineState, now: PipelineState, _maps: SiteMaps, nowMs: number): void {
  const units = new Map(now.site.units.map((unit) => [unit.id, unit]));
  for (const [id, permit] of before.permits) {
    const unit = units.get(permit.unit);
    const there = permit.branch === null || unit?.branches.some((branch) => branch.id === permit.branch) === true;
    if (unit !== undefined && there) now.permits.set(id, permit);
    else now.permitChanges.push(closed(permit, nowMs));
  }
}

const closed = (permit: PermitRecord, nowMs: number) => ({
  what: 'closed' as const,
  permit: { ...permit, closedBy: null, closedMs: nowMs },
  atMs: nowMs,
  actor: null,
  station: null,
  comment: 'configuration: the site file no longer has what this permit is for',
});

/** What open permits allow, by unit; branches are found again by their ids. */
export function takeOverOpenPermits(before: PipelineState, now: PipelineState, { units }: SiteMaps): void {
  const byUnit = ({ openPermits }: PipelineState) => ({
    count: openPermits.count,
    expectedM3PerS: openPermits.expectedM3PerS,
    baselineM3PerS: openPermits.baselineM3PerS,
    wholeLoop: openPermits.wholeLoop,
    dueMs: openPermits.dueMs,
  });
  copyColumns(byUnit(before), byUnit(now), units);
  now.site.units.forEach((unit, i) => {
    const was = units.before[i] ?? -1;
    if (was < 0) return;
    const ids = before.openPermits.branchesOf(was).map((branch) => before.site.units[was]?.branches[branch]?.id);
    const branches = unit.branches.flatMap(({ id }, branch) => (ids.includes(id) ? [branch] : []));
    now.openPermits.setBranches(i, branches);
  });
}
