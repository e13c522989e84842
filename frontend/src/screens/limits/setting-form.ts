import type { ListedAlarm } from '@ebbline/shared/contract/alarm-list';
import type { AlarmSettings, ProposedSettings } from '@ebbline/shared/contract/alarm-settings';
import { proposedSettingsSchema } from '@ebbline/shared/contract/alarm-settings';
import type { NumberMember, SettingsOf } from '../../components/setting-units';
import { settingUnit } from '../../components/setting-units';
import { fromTyped, toTyped } from '../../text/shown-unit';
import type { SettingMember } from '../../text/setting-words';
import { settingMembers } from '../../text/setting-words';

/** Settings as typed, in the units in which they are read; an emptied field is ''. */
export type SettingForm = { [M in NumberMember]: number | '' } & { enabled: boolean; action: string };

export type Settable = Pick<ListedAlarm, 'unit_of_measure' | 'side' | 'hasDeadband' | 'changeable'>;

const hasBand = ({ side }: Settable): boolean => side === 'band' || side === 'ends';

/** The members of an entry that can be set at all, by what the server says of it. */
export function membersOf(one: Settable): readonly SettingMember[] {
  if (one.changeable === false) return [];
  return settingMembers.filter((member) => {
    if (member === 'limit') return one.unit_of_measure !== null;
    if (member === 'deadband') return one.unit_of_measure !== null && one.hasDeadband !== false;
    return member === 'low' ? hasBand(one) : true;
  });
}

/** What may stay empty: an end that a band has not, and what is told anew only where that is wished. */
export const mayBeEmpty = (one: Settable, member: NumberMember, settings: AlarmSettings): boolean =>
  member === 'reAlarmAfterSeconds' ||
  ((member === 'low' || (member === 'limit' && hasBand(one))) && settings[member] === null);

/** A form that says what runs, with a proposal laid over it. */
export function formOf(of: SettingsOf, settings: AlarmSettings, proposed: ProposedSettings = {}): SettingForm {
  const shown = (member: NumberMember): number | '' => {
    const value = proposed[member] === undefined ? settings[member] : proposed[member];
    return value === null ? '' : toTyped(value, settingUnit(of, member));
  };
  return {
    limit: shown('limit'),
    low: shown('low'),
    deadband: shown('deadband'),
    onDelaySeconds: shown('onDelaySeconds'),
    offDelaySeconds: shown('offDelaySeconds'),
    reAlarmAfterSeconds: shown('reAlarmAfterSeconds'),
    enabled: proposed.enabled ?? settings.enabled,
    action: (proposed.action === undefined ? settings.action : proposed.action) ?? '',
  };
}

/** What the form wants otherwise than it runs, in the units of the contract; null where something in it can't be meant. */
export function wantedOf(
  of: SettingsOf,
  one: Settable,
  running: AlarmSettings,
  form: SettingForm,
): ProposedSettings | null {
  const before = formOf(of, running);
  const wanted: Partial<Record<SettingMember, number | boolean | string | null>> = {};
  for (const member of membersOf(one)) {
    if (member === 'enabled') {
      if (form.enabled !== running.enabled) wanted.enabled = form.enabled;
    } else if (member === 'action') {
      const typed = form.action.trim();
      if (typed !== before.action) wanted.action = typed === '' ? null : typed;
    } else {
      const typed = form[member];
      if (typed === before[member] && (typed !== '' || mayBeEmpty(one, member, running))) continue;
      if (typed === '' && member === 'reAlarmAfterSeconds') wanted[member] = null;
      else if (typeof typed !== 'number' || !Number.isFinite(typed)) return null;
      else wanted[member] = fromTyped(typed, settingUnit(of, member));
    }
  }
  const parsed = proposedSettingsSchema.safeParse(wanted);
  return parsed.success ? parsed.data : null;
}

/** Members in which what runs by now is another than what was seen. */
export const otherSince = (seen: AlarmSettings, running: AlarmSettings): readonly SettingMember[] =>
  settingMembers.filter((member) => seen[member] !== running[member]);
