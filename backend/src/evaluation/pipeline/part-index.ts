import { unitEntries } from '../alarm-rules/catalogue/catalogue';
import type { PartKind } from '../alarm-rules/entry';
import type { CompiledSite, CompiledUnit } from '../site/compiled-site';

/** Places in `unitEntries` of the entries that are judged for each part. */
const partPlaces: readonly number[] = unitEntries.flatMap(({ per }, place) => (per === undefined ? [] : [place]));
const ordinalOf = unitEntries.map((_, place) => partPlaces.indexOf(place));

/** Alarms of entries that are judged for each branch or plate: unit by unit, entry by entry, part by part. */
export class PartIndex {
  readonly end: number;
  /** First alarm of unit × part entry. */
  private readonly firsts: Int32Array;

  constructor(
    site: CompiledSite,
    readonly first: number,
  ) {
    this.firsts = new Int32Array(site.units.length * partPlaces.length);
    let next = first;
    site.units.forEach((unit, index) => {
      partPlaces.forEach((place, ordinal) => {
        this.firsts[index * partPlaces.length + ordinal] = next;
        next += partsOf(unit, kindAt(place)).length;
      });
    });
    this.end = next;
  }

  /** Alarm of part 0 of an entry; the others follow. */
  of(unit: number, place: number): number {
    return this.firsts[unit * partPlaces.length + (ordinalOf[place] as number)] as number;
  }

  judgedOf(alarm: number): { readonly unit: number; readonly place: number; readonly part: number } {
    let low = 0;
    let high = this.firsts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((this.firsts[middle] as number) <= alarm) low = middle;
      else high = middle - 1;
    }
    const place = partPlaces[low % partPlaces.length] as number;
    return {
      unit: Math.floor(low / partPlaces.length),
      place,
      part: alarm - (this.firsts[low] as number),
    };
  }

  partId(unit: CompiledUnit, place: number, part: number): string {
    return partsOf(unit, kindAt(place))[part]?.id ?? '';
  }
}

const kindAt = (place: number): PartKind => unitEntries[place]?.per ?? 'branch';

export const partsOf = (
  unit: CompiledUnit,
  kind: PartKind,
): readonly { readonly id: string; readonly name: string }[] => (kind === 'branch' ? unit.branches : unit.plates);

/** The branch that a part is on, −1 where that is not known. */
export const branchOfPart = (unit: CompiledUnit, kind: PartKind, part: number): number =>
  kind === 'branch' ? part : (unit.plates[part]?.branch ?? -1);
