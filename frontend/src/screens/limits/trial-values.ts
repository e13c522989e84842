import type { ProposedSettings } from '@ebbline/shared/contract/alarm-settings';
import type { LimitTrial } from '@ebbline/shared/contract/limit-trial';
import { proposedSettingsSchema } from '@ebbline/shared/contract/alarm-settings';
import { settingMembers } from '../../text/setting-words';

/** What the proposal of a trial has otherwise than the live setting, to be taken into a change. */
export function valuesOfTrial({ live, proposed }: LimitTrial): ProposedSettings {
  if (live === null || proposed === null) return {};
  const set = Object.fromEntries(
    settingMembers
      .filter((member) => proposed.settings[member] !== null && proposed.settings[member] !== live.settings[member])
      .map((member) => [member, proposed.settings[member]]),
  );
  const parsed = proposedSettingsSchema.safeParse(set);
  return parsed.success ? parsed.data : {};
}
