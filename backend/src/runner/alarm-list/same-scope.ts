import type { SettingScope } from '@ebbline/shared/contract/alarm-settings';

/** Whether two scopes are the same place. */
export const sameScope = (first: SettingScope, second: SettingScope): boolean =>
  first.kind === second.kind && (first.kind === 'site' || second.kind === 'site' || first.id === second.id);
