import type { CompiledSite } from '../site/compiled-site';
import type { TrialColumns } from './trial-columns';
import { UncertaintyProbe } from './uncertainty-probe';

/**
 * Expanded uncertainty of a derived point at the end of a stretch of what was measured, worked out anew: history has values and no
 * uncertainties. NaN where an input is bad.
 * @param columns of `measuredSlots`
 */
export function probeUncertainty(site: CompiledSite, columns: TrialColumns, slot: number): number {
  const probe = new UncertaintyProbe(site, columns);
  probe.run(0, columns.count);
  return probe.expanded(slot);
}
