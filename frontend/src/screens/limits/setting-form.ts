import type { AlarmSettings, ProposedSettings } from '@ebbline/shared/contract/alarm-settings';
import { proposedSettingsSchema } from '@ebbline/shared/contract/alarm-settings';
import type { SettingsOf } from '../../components/setting-units';
import { fromShown, settingUnit, toShown } from '../../components/setting-units';
import type { SettingMember } from '../../text/setting-words';
import { settingMembers } from '../../text/setting-words';

export type NumberMember = Exclude<SettingMember, 'enabled'>;

/** Settings as typed, in the units in which they are read; an emptied field is ''. */
export type SettingForm = { [M in NumberMember]: number | '' } & { enabled: boolean };

/** The members that an entry has at all. */
export const membersOf = (settings: AlarmSettings): readonly SettingMember[] =>
  settingMembers.filter((member) => settings[member] !== null);

/** A form that says what runs, with a proposal laid over it. */
export function formOf(of: SettingsOf, settings: AlarmSettings, proposed: ProposedSettings = {}): SettingForm {
  const shown = (member: NumberMember): number | '' => {
    const value = proposed[member] ?? settings[member];
    return value === null ? '' : toShown(value, settingUnit(of, member));
  };
  return {
    limit: shown('limit'),
    low: shown('low'),
    deadband: shown('deadband'),
    onDelaySeconds: shown('onDelaySeconds'),
    offDelaySeconds: shown('offDelaySeconds'),
    enabled: proposed.enabled ?? settings.enabled,
  };
}

/** What the form wants otherwise than it runs, in the units of the contract; null where something in it can't be meant. */
export function wantedOf(of: SettingsOf, running: AlarmSettings, form: SettingForm): ProposedSettings | null {
  const before = formOf(of, running);
  const wanted: Partial<Record<SettingMember, number | boolean>> = {};
  for (const member of membersOf(running)) {
    if (member === 'enabled') {
      if (form.enabled !== running.enabled) wanted.enabled = form.enabled;
      continue;
    }
    const typed = form[member];
    if (typeof typed !== 'number' || !Number.isFinite(typed)) return null;
    if (typed !== before[member]) wanted[member] = fromShown(typed, settingUnit(of, member));
  }
  const parsed = proposedSettingsSchema.safeParse(wanted);
  return parsed.success ? parsed.data : null;
}
