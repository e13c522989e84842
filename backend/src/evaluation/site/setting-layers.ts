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

/** What the site file says. */
export function layersOfSite({ halls, units }: CompiledSite): SettingLayers {
  return {
    site: units[0]?.limitLevels?.site ?? none,
    halls: new Map(halls.map((hall) => [hall.id, units[hall.units[0] ?? -1]?.limitLevels?.hall ?? none])),
    units: new Map(units.map((unit) => [unit.id, unit.limitLevels?.unit ?? unit.limits])),
  };
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
