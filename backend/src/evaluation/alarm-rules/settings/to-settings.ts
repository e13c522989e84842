import type { AlarmSettings } from '@ebbline/shared/contract/alarm-settings';
import type { EntryLimits } from '../../site/compiled-site';
import { catalogue } from '../catalogue/catalogue';
import type { EntryId } from '../entry-ids';
import { rationaleTable } from '../rationale/rationale-table';
import { resolveLimits } from '../resolve-limits';

/** The settings of an entry with what is said otherwise, as people are told them: numbers that it does not have are null. */
export function toSettings(id: EntryId, said: EntryLimits | undefined): AlarmSettings {
  const { setting } = rationaleTable[id];
  const { limit, low, deadband, onDelayMs, offDelayMs, enabled } = resolveLimits(
    catalogue[id].defaults,
    setting.changeable ? said : undefined,
  );
  return {
    limit: setting.limit === null ? null : orNull(limit),
    low: orNull(low),
    deadband: setting.limit === null ? 0 : deadband,
    onDelaySeconds: onDelayMs / 1000,
    offDelaySeconds: offDelayMs / 1000,
    enabled,
  };
}

const orNull = (value = Number.NaN): number | null => (Number.isFinite(value) ? value : null);

export const settingMembers = ['limit', 'low', 'deadband', 'onDelaySeconds', 'offDelaySeconds', 'enabled'] as const;
export type SettingMember = (typeof settingMembers)[number];

/** Members in which two settings differ; what a unit of measure has rounded is no difference. */
export const differingMembers = (first: AlarmSettings, second: AlarmSettings): SettingMember[] =>
  settingMembers.filter((member) => !alike(first[member], second[member]));

function alike(first: AlarmSettings[SettingMember], second: AlarmSettings[SettingMember]): boolean {
  if (typeof first !== 'number' || typeof second !== 'number') return first === second;
  return Math.abs(first - second) <= 1e-9 * Math.max(Math.abs(first), Math.abs(second));
}
