import type { SecondWindows } from './second-windows';

/** After a source stops, its line empties and pressures settle: own rule, s. */
const settleS = 3;
/** Samples of which the beginning and the end of the test are each the mean. */
const ends = 4;
/** A test tells nothing before it has lasted so long, s: own rule. */
const shortestS = 10;

/**
 * Each pause of a vacuum source is a free pressure-rise test: nothing is taken away, so all gas that comes in stays. The longer
 * the pause, the surer the rate. Of the last pause the rate is kept until the next one has lasted long enough.
 */
export class OffTests {
  private readonly seconds: Float64Array;
  private readonly begin: Float64Array;
  /** Pa m³/s; NaN before the first test. */
  readonly rate: Float64Array;
  /** Standard deviation of `rate` by the noise of the samples alone. */
  readonly noise: Float64Array;
  /** Degrees of freedom of `noise`; Infinity before the first. */
  readonly noiseDegrees: Float64Array;

  constructor(units: number) {
    this.seconds = new Float64Array(units);
    this.begin = new Float64Array(units).fill(Number.NaN);
    this.rate = new Float64Array(units).fill(Number.NaN);
    this.noise = new Float64Array(units).fill(Number.NaN);
    this.noiseDegrees = new Float64Array(units).fill(Infinity);
  }

  /** Once a second, after the gas content was pushed to `signal`. `running` above 0 or NaN: not at rest. */
  step(unit: number, running: number, windows: SecondWindows, signal: number): void {
    if (running !== 0) {
      this.interrupt(unit);
      return;
    }
    const lasted = (this.seconds[unit] = (this.seconds[unit] as number) + 1);
    if (lasted === settleS + ends) this.begin[unit] = windows.mean(signal, 0, ends);
    const between = lasted - settleS - ends;
    if (between < shortestS) return;
    const rate = (windows.mean(signal, 0, ends) - (this.begin[unit] as number)) / between;
    if (Number.isNaN(rate)) return;
    this.rate[unit] = rate;
    this.noise[unit] = (windows.noise(signal) * Math.sqrt(2 / ends)) / between;
    this.noiseDegrees[unit] = windows.noiseDegreesOfFreedom(signal);
  }

  /** The pause ended, or seconds are missing: the next test begins anew. */
  interrupt(unit: number): void {
    this.seconds[unit] = 0;
    this.begin[unit] = Number.NaN;
  }
}
