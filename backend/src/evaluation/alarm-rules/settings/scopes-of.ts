import type { SettingScope } from '@ebbline/shared/contract/alarm-settings';
import { groupEntryIds, type EntryId } from '../entry-ids';
import { rationaleTable } from '../rationale/rationale-table';

/** For what an entry can be set: what spans units has the limits of its hall, and what is fixed can't be set. */
export function scopesOf(id: EntryId): readonly SettingScope['kind'][] {
  if (!rationaleTable[id].setting.changeable) return [];
  return scopesAuthorised(id);
}

/** For what a list may say something of it: of what is fixed words alone, by site procedure. */
export const scopesAuthorised = (id: EntryId): readonly SettingScope['kind'][] =>
  spansUnits(id) ? ['site', 'hall'] : ['site', 'hall', 'unit'];

const spansUnits = (id: EntryId): boolean => groupEntryIds.some((group) => group === id);
