import type { ListedAlarm, ListedSetting } from '@ebbline/shared/contract/alarm-list';
import type { SettingScope } from '@ebbline/shared/contract/alarm-settings';
import type { Site } from '@ebbline/shared/contract/http-api';

/** A scope in one word, for a choice and for a key. */
export const scopeKey = (scope: SettingScope): string => (scope.kind === 'site' ? 'site' : `${scope.kind}:${scope.id}`);

export function scopeOfKey(key: string): SettingScope {
  const [kind, id = ''] = key.split(':');
  return (kind === 'hall' || kind === 'unit') && id !== '' ? { kind, id } : { kind: 'site' };
}

export function sayScope(scope: SettingScope, site: Site | null): string {
  if (scope.kind === 'site') return 'the whole site';
  const named = scope.kind === 'hall' ? site?.halls : site?.units;
  return named?.find(({ id }) => id === scope.id)?.name ?? scope.id;
}

/** What holds for a scope: its own setting, else that of the next wider one. */
export function settingAt(one: ListedAlarm, scope: SettingScope, site: Site | null): ListedSetting | undefined {
  const own = (wanted: SettingScope): ListedSetting | undefined =>
    one.settings.find((setting) => scopeKey(setting.scope) === scopeKey(wanted));
  const hall = scope.kind === 'unit' ? site?.units.find(({ id }) => id === scope.id)?.hall : undefined;
  return (
    own(scope) ??
    (hall === undefined ? undefined : own({ kind: 'hall', id: hall })) ??
    own({ kind: 'site' }) ??
    one.settings[0]
  );
}
