import type { CompiledSite } from '../site/compiled-site';
import { limitsOfUnit } from './limits-of-unit';
import type { PipelineState } from './pipeline-state';

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
