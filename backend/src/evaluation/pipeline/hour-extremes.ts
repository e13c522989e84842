const minutes = 60;

/** Lowest and highest of each minute, Pa absolute, the oldest first and the minute that runs last; null where nothing was seen. */
export interface HourTrail {
  readonly lowestPa: readonly (number | null)[];
  readonly highestPa: readonly (number | null)[];
}

/** Lowest and highest of the last hour for every unit, by minute: fills as time passes, forgets minute by minute. */
export class HourExtremes {
  private readonly lowest: Float64Array;
  private readonly highest: Float64Array;
  /** Which minute since 1970 a place holds. */
  private readonly minuteOf: Float64Array;

  constructor(units: number) {
    this.lowest = new Float64Array(units * minutes).fill(Number.NaN);
    this.highest = new Float64Array(units * minutes).fill(Number.NaN);
    this.minuteOf = new Float64Array(units * minutes).fill(Number.NaN);
  }

  /** NaN of either is no observation. */
  observe(unit: number, nowMs: number, lowest: number, highest: number): void {
    if (Number.isNaN(lowest) || Number.isNaN(highest)) return;
    const minute = Math.floor(nowMs / 60_000);
    const place = unit * minutes + (minute % minutes);
    if (this.minuteOf[place] !== minute) {
      this.minuteOf[place] = minute;
      this.lowest[place] = lowest;
      this.highest[place] = highest;
      return;
    }
    if (lowest < (this.lowest[place] as number)) this.lowest[place] = lowest;
    if (highest > (this.highest[place] as number)) this.highest[place] = highest;
  }

  /** Null where nothing was seen within the hour. */
  of(unit: number, nowMs: number): { readonly lowestPa: number | null; readonly highestPa: number | null } {
    const minute = Math.floor(nowMs / 60_000);
    let lowestPa: number | null = null;
    let highestPa: number | null = null;
    for (let place = unit * minutes; place < (unit + 1) * minutes; place += 1) {
      if (!((this.minuteOf[place] as number) > minute - minutes)) continue;
      const low = this.lowest[place] as number;
      const high = this.highest[place] as number;
      if (lowestPa === null || low < lowestPa) lowestPa = low;
      if (highestPa === null || high > highestPa) highestPa = high;
    }
    return { lowestPa, highestPa };
  }

  /** Minute by minute what `of` says in one. Pa in whole numbers: a strip shows no less. */
  trail(unit: number, nowMs: number): HourTrail {
    const newest = Math.floor(nowMs / 60_000);
    const from = (cells: Float64Array): (number | null)[] =>
      Array.from({ length: minutes }, (_, at) => {
        const minute = newest - minutes + 1 + at;
        const place = unit * minutes + (minute % minutes);
        return this.minuteOf[place] === minute ? Math.round(cells[place] as number) : null;
      });
    return { lowestPa: from(this.lowest), highestPa: from(this.highest) };
  }
}
