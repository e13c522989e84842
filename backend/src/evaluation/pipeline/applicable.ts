import { unitEntries } from '../alarm-rules/catalogue/catalogue';
import type { UnitEntry } from '../alarm-rules/entry';
import type { UnitSlots } from '../alarm-rules/unit-slots';
import type { CompiledSite, CompiledUnit } from '../site/compiled-site';
import type { AlarmIndex } from './alarm-index';
import { partsOf } from './part-index';

/** Which alarms a site has by what its units measure, and which entries are to be judged for each unit. */
export function applicable(
  site: CompiledSite,
  index: AlarmIndex,
  unitSlots: readonly UnitSlots[],
): { readonly applies: Uint8Array; readonly unitPlaces: readonly Uint8Array[] } {
  const applies = new Uint8Array(index.count).fill(1);
  /** One list for all units that have the same entries: thousands of copies would be read from memory each second. */
  const known = new Map<string, Uint8Array>();
  const unitPlaces = site.units.map((unit, unitIndex) => {
    const slots = unitSlots[unitIndex] as UnitSlots;
    const places: number[] = [];
    unitEntries.forEach((entry, place) => {
      let any = false;
      for (const [part, alarm] of alarmsOf(index, unit, unitIndex, entry, place)) {
        const has = entry.applies?.(unit, slots, part) ?? true;
        applies[alarm] = has ? 1 : 0;
        any ||= has;
      }
      if (any) places.push(place);
    });
    const key = places.join();
    const alike = known.get(key) ?? Uint8Array.from(places);
    known.set(key, alike);
    return alike;
  });
  return { applies, unitPlaces };
}

function alarmsOf(
  index: AlarmIndex,
  unit: CompiledUnit,
  unitIndex: number,
  entry: UnitEntry,
  place: number,
): readonly (readonly [part: number, alarm: number])[] {
  if (entry.per === undefined) return [[-1, index.ofUnit(unitIndex) + place]];
  const first = index.parts.of(unitIndex, place);
  return partsOf(unit, entry.per).map((_, part) => [part, first + part]);
}
