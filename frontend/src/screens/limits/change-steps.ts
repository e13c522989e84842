import type { ListedAlarm, SettingChange } from '@ebbline/shared/contract/alarm-list';
import { saySettingOrNone } from '../../components/setting-units';
import { settingMembers, settingWords } from '../../text/setting-words';

/** Which settings a change makes, from what to what. */
export function changeSteps(change: SettingChange, entries: readonly ListedAlarm[]): readonly string[] {
  const listed = entries.find(({ entry }) => entry === change.entry);
  const of = { entry: change.entry, unit_of_measure: listed?.unit_of_measure ?? null, limit: change.new.limit };
  return settingMembers
    .filter((member) => change.old[member] !== change.new[member])
    .map(
      (member) =>
        `${settingWords[member]} ${saySettingOrNone(of, member, change.old)} → ${saySettingOrNone(of, member, change.new)}`,
    );
}
