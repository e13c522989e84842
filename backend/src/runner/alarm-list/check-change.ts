import type { ChangeSettingsRequest } from '@ebbline/shared/contract/alarm-list';
import type { AlarmSettings, SettingScope } from '@ebbline/shared/contract/alarm-settings';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { EntryId } from '../../evaluation/alarm-rules/entry-ids';
import { isEntryId } from '../../evaluation/alarm-rules/rationale/rationale-table';
import { checkSetting } from '../../evaluation/alarm-rules/settings/check-setting';
import { toSettings } from '../../evaluation/alarm-rules/settings/to-settings';
import { stepsCross } from '../../evaluation/alarm-rules/settings/two-steps';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import type { SettingActionFault } from '../../ports/alarm-list';
import { scopesOf } from './listed-settings';
import { placesOf } from './places';
import { sameScope } from './same-scope';
import type { SettingsInForce } from './settings-in-force';

export interface CheckedChange {
  readonly entry: EntryId;
  readonly old: AlarmSettings;
  readonly new: AlarmSettings;
}

/** What a change would make of the settings at its place, or why it is not made. */
export function checkChange(
  settings: SettingsInForce,
  { entry, scope, set, unit_of_measure }: ChangeSettingsRequest,
): Result<CheckedChange, SettingActionFault> {
  const fault = (code: SettingActionFault['code'], message: string) => fail({ code, message });
  if (!isEntryId(entry))
    return fault('SETTING_ENTRY_UNKNOWN', `There is no entry ${entry}; /api/alarm-list has them all.`);
  if (!isThere(settings.site(), scope))
    return fault(
      'SETTING_SCOPE_UNKNOWN',
      `The site has no such ${scope.kind}; /api/units lists units and their halls.`,
    );
  const scopes = scopesOf(entry);
  if (scopes.length > 0 && !scopes.includes(scope.kind))
    return fault('SETTING_SCOPE', `${entry} spans units; set it for ${scopes.join(' or ')}.`);
  const at = placesOf(settings, null).find((place) => sameScope(place.scope, scope));
  const old = toSettings(entry, at?.running.get(entry));
  const checked = checkSetting(entry, old, set, unit_of_measure);
  if (!checked.ok) return checked;
  const crossed = crossedAnywhere(settings, settings.with({ entry, scope, set }), entry);
  if (crossed !== null) return fault('SETTING_STEPS', crossed);
  return ok({ entry, old, new: checked.value });
}

const isThere = ({ halls, units }: CompiledSite, scope: SettingScope): boolean =>
  scope.kind === 'site' || (scope.kind === 'hall' ? halls : units).some(({ id }) => id === scope.id);

/** What is wrong with a two-step pair at any unit that the change reaches. */
function crossedAnywhere(settings: SettingsInForce, next: CompiledSite, entry: EntryId): string | null {
  const before = settings.running().units;
  for (const [i, unit] of next.units.entries()) {
    if (unit.limits === before[i]?.limits) continue;
    const crossed = stepsCross(entry, unit.limits);
    if (crossed !== null) return `${crossed} At unit ${unit.id} it would not.`;
  }
  return null;
}
