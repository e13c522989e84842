import type { PermitRecord } from './permit-record';
import { allowPermits } from './permits/allow-permits';
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

/** What the permits that stay open allow, worked out anew for every unit that had one; after `takeOverPermits`. */
export function takeOverOpenPermits(before: PipelineState, now: PipelineState, _maps: SiteMaps, nowMs: number): void {
  for (const unit of new Set([...before.permits.values()].map((permit) => permit.unit))) allowPermits(now, unit, nowMs);
}
