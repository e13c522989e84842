import type { AlarmSettings, ProposedSettings, SettingScope } from '@ebbline/shared/contract/alarm-settings';
import type { CompiledSite } from '../../site/compiled-site';
import type { LimitsAt } from '../../site/compiled-unit';
import type { FaultList, FaultPath } from '../../site/site-fault';
import { limitsAt, type Place, type SettingLayers } from '../../site/setting-layers';
import { rationaleTable } from '../rationale/rationale-table';
import type { EntryId } from '../entry-ids';
import { checkSetting } from './check-setting';
import { toSettings } from './to-settings';
import { stepsCross } from './two-steps';

/** Settings that the list gives an entry at one place, and where they stand in it. */
export interface AuthorisedPlace {
  readonly entry: EntryId;
  readonly scope: SettingScope;
  readonly path: FaultPath;
}

const noBands: LimitsAt = new Map();

/** Adds a fault where an alarm so set could never tell or never clear, or where the second step of a pair would tell first. */
export function checkAuthorisedSense(
  layers: SettingLayers,
  places: readonly AuthorisedPlace[],
  site: CompiledSite,
  faults: FaultList,
): void {
  for (const { entry, scope, path } of places) {
    if (!rationaleTable[entry].setting.changeable) continue;
    const settings = toSettings(entry, limitsAt([layers], noBands, placeOf(scope, site)).get(entry));
    const checked = checkSetting(entry, toSettings(entry, undefined), proposed(entry, settings));
    if (!checked.ok && checked.fault.code !== 'SETTING_UNCHANGED') faults.add(path, checked.fault.message);
  }
  const all: readonly Place[] = [
    { hall: null, unit: null },
    ...site.halls.map(({ id }) => ({ hall: id, unit: null })),
    ...site.units.map(({ id, hall }) => ({ hall: site.halls[hall]?.id ?? null, unit: id })),
  ];
  const ids = new Set(places.map(({ entry }) => entry));
  const told = new Set<string>();
  for (const place of all) {
    const limits = limitsAt([layers], noBands, place);
    for (const id of ids) {
      const crossed = stepsCross(id, limits);
      if (crossed === null || told.has(crossed)) continue;
      told.add(crossed);
      const where = place.unit ?? place.hall;
      faults.add(['entries', id], `${crossed} ${where === null ? 'At the site' : `At ${where}`} it would not.`);
    }
  }
}

function placeOf(scope: SettingScope, site: CompiledSite): Place {
  if (scope.kind === 'site') return { hall: null, unit: null };
  if (scope.kind === 'hall') return { hall: scope.id, unit: null };
  const unit = site.units.find(({ id }) => id === scope.id);
  return { hall: site.halls[unit?.hall ?? -1]?.id ?? null, unit: scope.id };
}

/** Settings as a change would ask for them: only what the entry has. */
function proposed(id: EntryId, { limit, low, deadband, ...rest }: AlarmSettings): ProposedSettings {
  return {
    ...rest,
    ...(limit === null ? {} : { limit }),
    ...(low === null ? {} : { low }),
    ...(rationaleTable[id].setting.deadband ? { deadband } : {}),
  };
}
