import type { PermitRecord } from '../permit-record';
import type { PipelineState } from '../pipeline-state';
import { atRestart } from '../stamp-restored';
import { allowPermits } from './allow-permits';

/**
 * Takes back what the journal holds open. A permit of a unit or branch that the site no longer has is closed, and that is told
 * with the next changes.
 */
export function restorePermits(pipeline: PipelineState, records: readonly PermitRecord[]): void {
  for (const permit of records) {
    if (permit.closedMs !== null) continue;
    const unit = pipeline.site.units.find(({ id }) => id === permit.unit);
    const isThere = permit.branch === null || unit?.branches.some(({ id }) => id === permit.branch) === true;
    if (unit !== undefined && isThere) {
      pipeline.permits.set(permit.id, permit);
      // Who is overdue is seen with the first step.
      allowPermits(pipeline, permit.unit, Number.NaN);
      continue;
    }
    pipeline.permitChanges.push({
      what: 'closed',
      permit: { ...permit, closedBy: null, closedMs: atRestart },
      atMs: atRestart,
      actor: null,
      station: null,
      comment: 'the site file no longer has what this permit is for',
    });
  }
}
