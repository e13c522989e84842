import type { EntryLimits } from '../site/compiled-site';
import type { Limits } from './entry';

/** All members always there, so that whoever reads them reads one shape. */
export interface ResolvedLimits extends Limits {
  readonly low: number;
  readonly reAlarmAfterMs: number | undefined;
  readonly enabled: boolean;
}

/** The catalogue's defaults with what the site file says instead. */
export function resolveLimits(defaults: Limits, site: EntryLimits | undefined): ResolvedLimits {
  return {
    limit: site?.limit ?? defaults.limit,
    low: site?.low ?? defaults.low ?? Number.NaN,
    deadband: site?.deadband ?? defaults.deadband,
    onDelayMs: site?.onDelayMs ?? defaults.onDelayMs,
    offDelayMs: site?.offDelayMs ?? defaults.offDelayMs,
    reAlarmAfterMs: site?.reAlarmAfterMs ?? defaults.reAlarmAfterMs,
    enabled: site?.enabled ?? true,
  };
}
