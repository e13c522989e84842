import type { ListedAlarm } from '@ebbline/shared/contract/alarm-list';
import type { SettingScope } from '@ebbline/shared/contract/alarm-settings';
import type { Site } from '@ebbline/shared/contract/http-api';

/** For what an entry can be set; a server that does not say so takes all. */
export const kindsOf = ({ scopes }: Pick<ListedAlarm, 'scopes'>): readonly SettingScope['kind'][] =>
  scopes ?? ['site', 'hall', 'unit'];

/** Where a change begins: at the unit that was come from, or the nearest around it for which the entry can be set. */
export function firstScope(one: Pick<ListedAlarm, 'scopes'>, unit: string | null, site: Site | null): SettingScope {
  const kinds = kindsOf(one);
  const hall = site?.units.find(({ id }) => id === unit)?.hall;
  if (unit !== null && kinds.includes('unit')) return { kind: 'unit', id: unit };
  if (hall !== undefined && kinds.includes('hall')) return { kind: 'hall', id: hall };
  return { kind: 'site' };
}
