import type { AlarmSettings, SeenSettings, SettingScope } from '@ebbline/shared/contract/alarm-settings';
import type { EntryId } from '../../evaluation/alarm-rules/entry-ids';
import { unitOfSetting } from '../../evaluation/alarm-rules/rationale/rationale-table';
import { sameSetting, settingMembers, type SettingMember } from '../../evaluation/alarm-rules/settings/to-settings';
import type { SettingActionFault } from '../../ports/alarm-list';
import { changeBehind, toSettingChange } from './audit';
import type { SettingsInForce } from './settings-in-force';

/** What runs otherwise than whoever asks has seen it, and who made it so; null: what was seen still runs. */
export function changedMeanwhile(
  settings: SettingsInForce,
  entry: EntryId,
  scope: SettingScope,
  seen: SeenSettings,
  running: AlarmSettings,
): SettingActionFault | null {
  const others = settingMembers.filter((member) => {
    const saw = seen[member];
    return saw !== undefined && !sameSetting(saw, running[member]);
  });
  const [first] = others;
  if (first === undefined) return null;
  const changes = others.flatMap((member) => {
    const change = changeBehind(settings.accepted(), entry, scope, member, settings.site());
    return change === null ? [] : [change];
  });
  const last = changes.reduce<(typeof changes)[number] | null>(
    (latest, one) => (latest === null || one.atMs > latest.atMs ? one : latest),
    null,
  );
  const who =
    last === null
      ? 'by another site file'
      : `by ${last.operator} at ${new Date(last.atMs).toISOString()}: “${last.reason}”`;
  const what = others.map((member) => say(entry, member, seen[member] ?? null, running[member])).join(', ');
  return {
    code: 'SETTING_CHANGED_MEANWHILE',
    message: `${entry} was changed meanwhile ${who}. ${what}. Nothing was changed now; look at what runs, and ask again.`,
    members: { running, change: last === null ? null : toSettingChange(last) },
  };
}

function say(entry: EntryId, member: SettingMember, saw: Value, runs: Value): string {
  const isNumberOfEntry = member === 'limit' || member === 'low' || member === 'deadband';
  const unit = isNumberOfEntry ? (unitOfSetting(entry) ?? '1') : 's';
  const text = (value: Value): string =>
    value === null ? 'none' : typeof value === 'number' ? `${value}${unit === '1' ? '' : ` ${unit}`}` : String(value);
  return `${member} is ${text(runs)} and no longer ${text(saw)}`;
}

type Value = AlarmSettings[SettingMember];
