import type { AlarmSettings, ProposedSettings } from '@ebbline/shared/contract/alarm-settings';
import { unitEntries } from '../alarm-rules/catalogue/catalogue';
import { unitEntryPlace, type UnitEntryId } from '../alarm-rules/entry-ids';
import { resolveLimits, type ResolvedLimits } from '../alarm-rules/resolve-limits';
import type { EntryLimits } from '../site/compiled-site';

/** Judged by yes and no, or by bands that the site file states: a number of the entry changes nothing. */
const withoutLimit: ReadonlySet<UnitEntryId> = new Set<UnitEntryId>([
  'WATER-1',
  'SET-1',
  'CHEM-6',
  'CHEM-7',
  'ISOL-1',
  'PUMP-1',
  'VSRC-1',
  'VSRC-2',
  'INS-4',
]);

/** How an entry is set at a unit, with what the site file says for it. */
export function limitsOf(entry: UnitEntryId, own: EntryLimits | undefined): ResolvedLimits {
  const { defaults } = unitEntries[unitEntryPlace[entry]] ?? { defaults: undefined };
  if (defaults === undefined) throw new RangeError(`no entry ${entry}`);
  return resolveLimits(defaults, own);
}

/** The same with what is proposed in its place. */
export function withProposed(own: EntryLimits | undefined, proposed: ProposedSettings): EntryLimits {
  const { limit, low, deadband, onDelaySeconds, offDelaySeconds, enabled } = proposed;
  return {
    ...own,
    ...(limit === undefined ? {} : { limit }),
    ...(low === undefined ? {} : { low }),
    ...(deadband === undefined ? {} : { deadband }),
    ...(onDelaySeconds === undefined ? {} : { onDelayMs: onDelaySeconds * 1000 }),
    ...(offDelaySeconds === undefined ? {} : { offDelayMs: offDelaySeconds * 1000 }),
    ...(enabled === undefined ? {} : { enabled }),
  };
}

/** The first proposed member that the entry has not; null where it has all. */
export function absentSetting(entry: UnitEntryId, live: ResolvedLimits, proposed: ProposedSettings): string | null {
  const hasNumber = !withoutLimit.has(entry);
  if (proposed.limit !== undefined && !hasNumber) return 'limit';
  if (proposed.deadband !== undefined && !hasNumber) return 'deadband';
  return proposed.low !== undefined && live.low === undefined ? 'low' : null;
}

/** As the interface tells them. */
export function toSettings(entry: UnitEntryId, limits: ResolvedLimits): AlarmSettings {
  const orNull = (value: number | undefined): number | null => (Number.isFinite(value) ? (value ?? null) : null);
  return {
    limit: withoutLimit.has(entry) ? null : orNull(limits.limit),
    low: orNull(limits.low),
    deadband: limits.deadband,
    onDelaySeconds: limits.onDelayMs / 1000,
    offDelaySeconds: limits.offDelayMs / 1000,
    enabled: limits.enabled,
  };
}
