import type { TriedSettings } from '@ebbline/shared/contract/alarm-settings';
import { catalogue } from '../alarm-rules/catalogue/catalogue';
import type { EntryId } from '../alarm-rules/entry-ids';
import { rationaleTable } from '../alarm-rules/rationale/rationale-table';
import { resolveLimits, type ResolvedLimits } from '../alarm-rules/resolve-limits';
import { limitsOf as limitsOfSet } from '../alarm-rules/settings/setting-record';
import type { EntryLimits } from '../site/compiled-site';

/** How an entry is set at a unit, with what the site file says for it. */
export const limitsOf = (entry: EntryId, own: EntryLimits | undefined): ResolvedLimits =>
  resolveLimits(catalogue[entry].defaults, own);

/** The same with what is proposed in its place. */
export const withProposed = (own: EntryLimits | undefined, proposed: TriedSettings): EntryLimits => ({
  ...own,
  ...limitsOfSet(proposed),
});

/** The first proposed member that the entry has not; null where it has all. */
export function absentSetting(entry: EntryId, proposed: TriedSettings): string | null {
  const { deadband, limit, side } = rationaleTable[entry].setting;
  if (proposed.limit !== undefined && limit === null) return 'limit';
  if (proposed.deadband !== undefined && !deadband) return 'deadband';
  return proposed.low !== undefined && side !== 'band' && side !== 'ends' ? 'low' : null;
}
