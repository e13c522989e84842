import { counted } from '@ebbline/shared/hydraulics/tank-water';

const minutes = 10;

/** Top-up water of the last ten minutes, by minute, from counters that may roll over. */
export class TopUps {
  private readonly last: Float64Array;
  private readonly sums: Float64Array;
  private readonly minuteOf: Float64Array;
  private readonly sinceMs: Float64Array;
  /** All that was counted since the start, m³. */
  readonly total: Float64Array;

  constructor(units: number) {
    this.last = new Float64Array(units).fill(Number.NaN);
    this.sums = new Float64Array(units * minutes);
    this.minuteOf = new Float64Array(units * minutes).fill(Number.NaN);
    this.sinceMs = new Float64Array(units).fill(Number.NaN);
    this.total = new Float64Array(units);
  }

  /**
   * What the counter gained since the last reading, m³; NaN changes nothing and gains nothing. More than `most` at once, such
   * as all the water that a loop holds, is a counter that misreads or was put right: it gains nothing (own rule), or its air
   * would count as allowed and hide a leak.
   */
  push(unit: number, nowMs: number, reading: number, fullScale: number, most = Infinity): number {
    if (Number.isNaN(reading)) return 0;
    const before = this.last[unit] as number;
    this.last[unit] = reading;
    if (Number.isNaN(this.sinceMs[unit])) this.sinceMs[unit] = nowMs;
    if (Number.isNaN(before)) return 0;
    const gained = counted(before, reading, fullScale);
    if (!(gained >= 0 && gained <= most)) return 0;
    this.total[unit] = (this.total[unit] as number) + gained;
    const minute = Math.floor(nowMs / 60_000);
    const place = unit * minutes + (minute % minutes);
    if (this.minuteOf[place] !== minute) {
      this.minuteOf[place] = minute;
      this.sums[place] = 0;
    }
    this.sums[place] = (this.sums[place] as number) + gained;
    return gained;
  }

  /** Mean of the last ten minutes, m³/s; NaN until the first of them has passed. */
  rate(unit: number, nowMs: number): number {
    const watchedS = Math.min(
      60 * (minutes - 1) + ((nowMs / 1000) % 60),
      (nowMs - (this.sinceMs[unit] as number)) / 1000,
    );
    if (!(watchedS >= 60)) return Number.NaN;
    const minute = Math.floor(nowMs / 60_000);
    let sum = 0;
    for (let place = unit * minutes; place < (unit + 1) * minutes; place += 1)
      if ((this.minuteOf[place] as number) > minute - minutes) sum += this.sums[place] as number;
    return sum / watchedS;
  }
}
