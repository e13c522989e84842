import { unitEntries } from '../alarm-rules/catalogue/catalogue';
import { resolveLimits, type ResolvedLimits } from '../alarm-rules/resolve-limits';
import type { CompiledSite, CompiledUnit } from '../site/compiled-site';
import type { PipelineState } from './pipeline-state';

const limitsOfUnit = (unit: CompiledUnit): readonly ResolvedLimits[] =>
  unitEntries.map((entry) => resolveLimits(entry.defaults, unit.limits.get(entry.id)));

/**
 * The state with other limits and all else as it is: values, delays, alarms and history go on, and the next step judges by the
 * new limits. `site` is the one in force with other limits of its units, and nothing else; `before` is not to be used any more.
 */
export function swapLimits(before: PipelineState, site: CompiledSite): PipelineState {
  return {
    ...before,
    site,
    limits: site.units.map((unit, i) => {
      const kept = unit === before.site.units[i] ? before.limits[i] : undefined;
      return kept ?? limitsOfUnit(unit);
    }),
  };
}
