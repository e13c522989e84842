import type { CompiledSite, CompiledUnit, EntryLimits } from './compiled-site';
import { mergeLevels, overBands } from './compile-limits';
import type { LimitsAt } from './compiled-unit';

/** What one source of settings says for the site, its halls and its units, by their ids: the site file, or changes while running. */
export interface SettingLayers {
  readonly site: LimitsAt;
  readonly halls: ReadonlyMap<string, LimitsAt>;
  readonly units: ReadonlyMap<string, LimitsAt>;
}

/** A place of the site: the hall of a unit stands beside it. */
export interface Place {
  readonly hall: string | null;
  readonly unit: string | null;
}

const none: LimitsAt = new Map();

/** Asked for again with every change of a setting, and always the same of one site. */
const known = new WeakMap<CompiledSite, SettingLayers>();

/** What the site file says. */
export function layersOfSite(site: CompiledSite): SettingLayers {
  const { halls, units } = site;
  const made = known.get(site) ?? {
    site: units[0]?.limitLevels?.site ?? none,
    halls: new Map(halls.map((hall) => [hall.id, units[hall.units[0] ?? -1]?.limitLevels?.hall ?? none])),
    units: new Map(units.map((unit) => [unit.id, unit.limitLevels?.unit ?? unit.limits])),
  };
  known.set(site, made);
  return made;
}

/** The limits at a place: the nearest wins, and of equally near ones the later source. */
export const limitsAt = (
  sources: readonly SettingLayers[],
  bands: LimitsAt,
  { hall, unit }: Place,
): ReadonlyMap<string, EntryLimits> =>
  overBands(
    bands,
    mergeLevels([
      ...sources.map(({ site }) => site),
      ...(hall === null ? [] : sources.map(({ halls }) => halls.get(hall))),
      ...(unit === null ? [] : sources.map(({ units }) => units.get(unit))),
    ]),
  );

/** The same of one entry alone; undefined where nothing is said of it. */
export function entryLimitsAt(
  sources: readonly SettingLayers[],
  bands: LimitsAt,
  { hall, unit }: Place,
  entry: string,
): EntryLimits | undefined {
  let said: EntryLimits | undefined;
  const lay = (level: LimitsAt | undefined): void => {
    const own = level?.get(entry);
    if (own === null) said = undefined;
    else if (own !== undefined) said = { ...said, ...own };
  };
  for (const { site } of sources) lay(site);
  if (hall !== null) for (const { halls } of sources) lay(halls.get(hall));
  if (unit !== null) for (const { units } of sources) lay(units.get(unit));
  const band = bands.get(entry) ?? undefined;
  return band === undefined ? said : { ...band, ...said };
}

/** A site whose units have the changes laid over what the site file says. A unit that none of them reaches stays the same object. */
export function withSettings(site: CompiledSite, changes: SettingLayers): CompiledSite {
  if (changes.site.size + changes.halls.size + changes.units.size === 0) return site;
  const sources = [layersOfSite(site), changes];
  const laid = (unit: CompiledUnit): CompiledUnit => {
    const hall = site.halls[unit.hall]?.id ?? null;
    const reached = changes.site.size > 0 || changes.halls.has(hall ?? '') || changes.units.has(unit.id);
    if (!reached) return unit;
    return { ...unit, limits: limitsAt(sources, unit.limitLevels?.bands ?? none, { hall, unit: unit.id }) };
  };
  return { ...site, units: site.units.map(laid) };
}
