import type { AlarmSettings, SettingScope } from '@ebbline/shared/contract/alarm-settings';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { CompiledSite } from '../../site/compiled-site';
import type { LimitsAt } from '../../site/compiled-unit';
import { entryLimitsAt, layersOfSite, type Place, type SettingLayers } from '../../site/setting-layers';
import type { EntryId } from '../entry-ids';
import { isEntryId } from '../rationale/rationale-table';
import { checkSetting, type SettingFault, type SettingFaultCode } from './check-setting';
import { faultAtReached } from './reached-units';
import { scopesOf } from './scopes-of';
import type { MadeChange } from './setting-record';
import { toSettings } from './to-settings';

/** Why a change does not fit a site. Stable. */
export type ChangeFaultCode =
  SettingFaultCode | 'SETTING_ENTRY_UNKNOWN' | 'SETTING_SCOPE_UNKNOWN' | 'SETTING_SCOPE' | 'SETTING_STEPS';
export type ChangeFault = SettingFault<ChangeFaultCode>;

export interface CheckedChange {
  readonly entry: EntryId;
  readonly old: AlarmSettings;
  readonly new: AlarmSettings;
}

/**
 * What a change would make of the settings at its place, or why it is not made: looked at there, and at every unit that it reaches.
 * @param changes those made before it
 */
export function checkChange(
  site: CompiledSite,
  changes: SettingLayers,
  { entry, scope, set, unit_of_measure }: MadeChange & { readonly unit_of_measure?: string | null | undefined },
): Result<CheckedChange, ChangeFault> {
  const fault = (code: ChangeFaultCode, message: string) => fail({ code, message });
  if (!isEntryId(entry))
    return fault('SETTING_ENTRY_UNKNOWN', `There is no entry ${entry}; /api/alarm-list has them all.`);
  if (!isThere(site, scope))
    return fault(
      'SETTING_SCOPE_UNKNOWN',
      `The site has no such ${scope.kind}; /api/units lists units and their halls.`,
    );
  const scopes = scopesOf(entry);
  if (scopes.length > 0 && !scopes.includes(scope.kind))
    return fault('SETTING_SCOPE', `${entry} spans units; set it for ${scopes.join(' or ')}.`);
  const old = settingsAt(site, changes, entry, scope);
  const checked = checkSetting(entry, old, set, unit_of_measure);
  if (!checked.ok) return checked;
  const nonsense = faultAtReached(site, changes, { entry, scope, set });
  return nonsense === null ? ok({ entry, old, new: checked.value }) : fail(nonsense);
}

export const isThere = ({ halls, units }: CompiledSite, scope: SettingScope): boolean =>
  scope.kind === 'site' || (scope.kind === 'hall' ? halls : units).some(({ id }) => id === scope.id);

/** How an entry is set at a place, with the changes made so far. */
export function settingsAt(
  site: CompiledSite,
  changes: SettingLayers,
  entry: EntryId,
  scope: SettingScope,
): AlarmSettings {
  const unit = scope.kind === 'unit' ? site.units.find(({ id }) => id === scope.id) : undefined;
  const place: Place = {
    hall: scope.kind === 'hall' ? scope.id : (site.halls[unit?.hall ?? -1]?.id ?? null),
    unit: unit?.id ?? null,
  };
  const within = site.units.filter(
    (one) => scope.kind === 'site' || (scope.kind === 'unit' ? one === unit : site.halls[one.hall]?.id === scope.id),
  );
  const bands = commonBand(
    within.map((one) => one.limitLevels?.bands),
    entry,
  );
  return toSettings(entry, entryLimitsAt([layersOfSite(site), changes], bands, place, entry));
}

/** The band of the water of one entry, where all of these units agree on it. */
function commonBand([first, ...others]: readonly (LimitsAt | undefined)[], entry: string): LimitsAt {
  const band = first?.get(entry);
  if (band === undefined) return new Map();
  const text = JSON.stringify(band);
  return others.every((bands) => JSON.stringify(bands?.get(entry)) === text) ? new Map([[entry, band]]) : new Map();
}
