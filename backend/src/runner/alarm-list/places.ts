import type { SettingScope } from '@ebbline/shared/contract/alarm-settings';
import type { CompiledSite, EntryLimits } from '../../evaluation/site/compiled-site';
import type { LimitsAt } from '../../evaluation/site/compiled-unit';
import { layersOfSite, limitsAt, type SettingLayers } from '../../evaluation/site/setting-layers';
import type { AuthorisedList } from '../../ports/authorised-list';
import type { SettingsInForce } from './settings-in-force';

/** The limits by entry at one place: as authorised, and as they run. */
export interface PlaceLimits {
  readonly scope: SettingScope;
  /** Place in the list of what it lies in; null: the site. */
  readonly parent: number | null;
  readonly authorised: ReadonlyMap<string, EntryLimits>;
  readonly running: ReadonlyMap<string, EntryLimits>;
}

/** The site, then its halls, then its units. */
export function placesOf(settings: SettingsInForce, list: AuthorisedList | null): readonly PlaceLimits[] {
  const site = settings.site();
  const file = layersOfSite(site);
  const runs: readonly SettingLayers[] = [file, settings.changes()];
  const allowed: readonly SettingLayers[] = list === null ? [file] : [list.layers];
  const at = (
    scope: SettingScope,
    parent: number | null,
    hall: string | null,
    unit: string | null,
    units: readonly number[],
  ): PlaceLimits => {
    const bands = commonBands(site, units);
    const place = { hall, unit };
    return {
      scope,
      parent,
      authorised: limitsAt(allowed, list === null ? bands : none, place),
      running: limitsAt(runs, bands, place),
    };
  };
  const all = site.units.map((_, i) => i);
  return [
    at({ kind: 'site' }, null, null, null, all),
    ...site.halls.map(({ id, units }) => at({ kind: 'hall', id }, 0, id, null, units)),
    ...site.units.map(({ id, hall }, i) => at({ kind: 'unit', id }, 1 + hall, site.halls[hall]?.id ?? null, id, [i])),
  ];
}

const none: LimitsAt = new Map();

/** Bands of the water on which all of these units agree. */
function commonBands({ units }: CompiledSite, of: readonly number[]): LimitsAt {
  const [first = none, ...others] = of.map((unit) => units[unit]?.limitLevels?.bands ?? none);
  const alike = (id: string): boolean =>
    others.every((bands) => JSON.stringify(bands.get(id)) === JSON.stringify(first.get(id)));
  return others.length === 0 ? first : new Map([...first].filter(([id]) => alike(id)));
}
