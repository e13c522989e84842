import type { AlarmSettings } from '@ebbline/shared/contract/alarm-settings';
import type { EntryLimits } from '../../site/compiled-site';
import { catalogue } from '../catalogue/catalogue';
import type { EntryId } from '../entry-ids';
import { rationaleTable } from '../rationale/rationale-table';
import { resolveLimits } from '../resolve-limits';

/**
 * The settings of an entry with what is said otherwise, as people are told them: what it does not have is null. Of an entry that
 * is judged by rules of the program itself a site has only words of its own.
 */
export function toSettings(id: EntryId, said: EntryLimits | undefined): AlarmSettings {
  const { setting } = rationaleTable[id];
  const { limit, low, deadband, onDelayMs, offDelayMs, reAlarmAfterMs, enabled } = resolveLimits(
    catalogue[id].defaults,
    setting.changeable ? said : undefined,
  );
  const again = orNull(reAlarmAfterMs);
  const action = said?.action ?? '';
  return {
    limit: setting.limit === null ? null : orNull(limit),
    low: orNull(low),
    deadband: setting.deadband ? deadband : 0,
    onDelaySeconds: onDelayMs / 1000,
    offDelaySeconds: offDelayMs / 1000,
    reAlarmAfterSeconds: again === null ? null : again / 1000,
    enabled,
    action: action === '' ? null : action,
  };
}

const orNull = (value = Number.NaN): number | null => (Number.isFinite(value) ? value : null);

export const settingMembers = [
  'limit',
  'low',
  'deadband',
  'onDelaySeconds',
  'offDelaySeconds',
  'reAlarmAfterSeconds',
  'enabled',
  'action',
] as const satisfies readonly (keyof AlarmSettings)[];
export type SettingMember = (typeof settingMembers)[number];

/** Members in which two settings differ; what a unit of measure has rounded is no difference. */
export const differingMembers = (first: AlarmSettings, second: AlarmSettings): SettingMember[] =>
  settingMembers.filter((member) => !sameSetting(first[member], second[member]));

export function sameSetting(first: AlarmSettings[SettingMember], second: AlarmSettings[SettingMember]): boolean {
  if (typeof first !== 'number' || typeof second !== 'number') return first === second;
  return Math.abs(first - second) <= 1e-9 * Math.max(Math.abs(first), Math.abs(second));
}
