import type { EntryLimits } from '../site/compiled-site';
import type { Limits } from './entry';

export interface ResolvedLimits extends Limits {
  readonly enabled: boolean;
}

/** The catalogue's defaults with what the site file says instead. */
export function resolveLimits(defaults: Limits, site: EntryLimits | undefined): ResolvedLimits {
  const low = site?.low ?? defaults.low;
  const reAlarmAfterMs = site?.reAlarmAfterMs ?? defaults.reAlarmAfterMs;
  return {
    limit: site?.limit ?? defaults.limit,
    ...(low === undefined ? {} : { low }),
    deadband: site?.deadband ?? defaults.deadband,
    onDelayMs: site?.onDelayMs ?? defaults.onDelayMs,
    offDelayMs: site?.offDelayMs ?? defaults.offDelayMs,
    ...(reAlarmAfterMs === undefined ? {} : { reAlarmAfterMs }),
    enabled: site?.enabled ?? true,
  };
}
