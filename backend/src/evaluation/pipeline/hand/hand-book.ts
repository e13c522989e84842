import type { WaterParameterId } from '@ebbline/shared/contract/water-parameters';
import type { HandRecord } from '../hand-record';

/** So many of each parameter of a unit are kept at hand; older ones stand in the journal. */
const mostKept = 50;

/** Every value that people typed, newest sample first; a corrected one stays beside the one in its place. */
export class HandBook {
  private readonly byPlace = new Map<string, HandRecord[]>();
  /** Id of an entry → id of the one in its place. */
  private readonly correctors = new Map<string, string>();

  add(record: HandRecord): void {
    const place = placeOf(record.unit, record.parameter);
    const records = [record, ...(this.byPlace.get(place) ?? [])].sort(newestFirst);
    for (const gone of records.splice(mostKept)) this.correctors.delete(gone.id);
    this.byPlace.set(place, records);
    if (record.corrects !== null) this.correctors.set(record.corrects, record.id);
  }

  /** Of one unit, newest sample first. */
  ofUnit(unit: string): readonly HandRecord[] {
    return [...this.byPlace.values()]
      .flat()
      .filter((record) => record.unit === unit)
      .sort(newestFirst);
  }

  find(unit: string, id: string): HandRecord | null {
    return this.ofUnit(unit).find((record) => record.id === id) ?? null;
  }

  correctorOf(id: string): string | null {
    return this.correctors.get(id) ?? null;
  }

  /** The newest sample that no correction has taken the place of and that was not withdrawn. */
  inForce(unit: string, parameter: WaterParameterId): (HandRecord & { readonly value: number }) | null {
    for (const record of this.byPlace.get(placeOf(unit, parameter)) ?? [])
      if (record.value !== null && !this.correctors.has(record.id)) return { ...record, value: record.value };
    return null;
  }

  /** What is in force of the samples of one second: of two, the later one. */
  inForceOfSecond(unit: string, parameter: WaterParameterId, takenMs: number): HandRecord | null {
    const second = Math.floor(takenMs / 1000);
    const records = this.byPlace.get(placeOf(unit, parameter)) ?? [];
    return (
      records.find(
        ({ id, takenMs: ms, value }) => value !== null && Math.floor(ms / 1000) === second && !this.correctors.has(id),
      ) ?? null
    );
  }

  all(): readonly HandRecord[] {
    return [...this.byPlace.values()].flat();
  }
}

/** Ids hold no slash. */
const placeOf = (unit: string, parameter: WaterParameterId): string => `${unit}/${parameter}`;

const newestFirst = (a: HandRecord, b: HandRecord): number => b.takenMs - a.takenMs || b.enteredMs - a.enteredMs;
