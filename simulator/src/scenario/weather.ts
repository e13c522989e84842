import { normal } from '../sensors/random-source';
import { seededRandom } from './seeded-random';

const hourS = 3600;
const meanPa = 100_950;
/**
 * A year of an airport's hourly pressure varies by 0.74 kPa (deviation) and by 0.71 kPa from one day to the next:
 * a second-order walk whose likeness after 24 h is 0.54 has this time, h.
 */
const deviationPa = 740;
const memoryH = 15.5;
/** Older shocks move the sum by less than a pascal, h. */
const longestH = Math.ceil(14 * memoryH);
/** The sum over n of (n e^(−n/τ))² is τ³/4. */
const shockPa = deviationPa / Math.sqrt(memoryH ** 3 / 4);

/**
 * Ambient pressure as a seeded walk: one shock an hour, each swelling and fading as t·e^(−t/τ), so that the pressure
 * moves smoothly. A function of time alone: any speed and any start see the same weather.
 */
export class Weather {
  private readonly shocks = new Map<number, number>();
  private hour = Number.NaN;
  /** Sums over the shocks up to the present hour: of e^(−t/τ), and of t·e^(−t/τ). */
  private fading = 0;
  private swelling = 0;

  constructor(private readonly seed: number) {}

  /** Pa, at a time in s since 1970. */
  ambientPa(epochS: number): number {
    const hour = Math.floor(epochS / hourS);
    if (hour !== this.hour) this.sumUp(hour);
    const on = epochS / hourS - hour;
    return meanPa + Math.exp(-on / memoryH) * (this.swelling + on * this.fading);
  }

  private sumUp(hour: number): void {
    this.hour = hour;
    this.fading = 0;
    this.swelling = 0;
    for (let age = longestH; age >= 0; age -= 1) {
      const left = this.shock(hour - age) * Math.exp(-age / memoryH);
      this.fading += left;
      this.swelling += age * left;
    }
    for (const kept of this.shocks.keys()) if (kept < hour - longestH) this.shocks.delete(kept);
  }

  private shock(hour: number): number {
    let shock = this.shocks.get(hour);
    if (shock === undefined) {
      shock = shockPa * normal(seededRandom(this.seed, `weather of hour ${hour}`));
      this.shocks.set(hour, shock);
    }
    return shock;
  }
}
