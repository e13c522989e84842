import type { TriedSettings } from '@ebbline/shared/contract/alarm-settings';
import type { LimitTrial } from '@ebbline/shared/contract/limit-trial';
import { triedSettingsSchema } from '@ebbline/shared/contract/alarm-settings';
import { settingMembers } from '../../text/setting-words';

/** What the proposal of a trial has otherwise than the live setting, to be taken into a change. */
export function valuesOfTrial({ live, proposed }: LimitTrial): TriedSettings {
  if (live === null || proposed === null) return {};
  const set = Object.fromEntries(
    settingMembers
      .filter((member) => member !== 'action' && proposed.settings[member] !== live.settings[member])
      .map((member) => [member, proposed.settings[member]]),
  );
  const parsed = triedSettingsSchema.safeParse(set);
  return parsed.success ? parsed.data : {};
}
