import { mannKendallZ } from '@ebbline/shared/statistics/mann-kendall';
import { theilSen } from '@ebbline/shared/statistics/theil-sen';
import { coverageFactorOf } from '@ebbline/shared/uncertainty/degrees-of-freedom';

export interface TrendOptions {
  /** Length of one mean, ms, and how many of them make the window. */
  readonly stepMs: number;
  readonly length: number;
}

/** Fewer means than this make no trend: own rule. */
const fewest = 8;
/** |z| of Mann–Kendall from which a trend counts: about 95 %. */
const certain = 2;

/**
 * Slow change of one value for every unit: means of some minutes or an hour, as many as the window holds, and the Theil–Sen
 * slope through them, worked out anew with each mean. Each unit's means end at its own moment, so that the work spreads.
 */
export class Trend {
  private readonly means: Float64Array;
  private readonly steps: Float64Array;
  private readonly sum: Float64Array;
  private readonly counted: Float64Array;
  private readonly step: Float64Array;
  /** A second; NaN until there are enough means. Lower and upper bound hold it with 95 %. */
  readonly slope: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  private readonly z: Float64Array;
  /** Span of the means in the window, s. */
  readonly spanS: Float64Array;
  /** Means that the slope goes through; NaN before the first slope. */
  private readonly points: Float64Array;

  constructor(
    units: number,
    private readonly options: TrendOptions,
  ) {
    const unknown = (): Float64Array => new Float64Array(units).fill(Number.NaN);
    this.means = new Float64Array(units * options.length);
    this.steps = new Float64Array(units * options.length).fill(Number.NaN);
    this.sum = new Float64Array(units);
    this.counted = new Float64Array(units);
    this.step = unknown();
    this.slope = unknown();
    this.lower = unknown();
    this.upper = unknown();
    this.z = unknown();
    this.spanS = unknown();
    this.points = unknown();
  }

  /** Takes one sample; NaN is none. */
  push(unit: number, nowMs: number, value: number): void {
    const { stepMs } = this.options;
    const step = Math.floor(nowMs / stepMs + spread(unit));
    if (this.step[unit] !== step) {
      this.close(unit);
      this.step[unit] = step;
      if (this.counts(unit, step - 1) < fewest - 1) this.forget(unit);
      this.sum[unit] = 0;
      this.counted[unit] = 0;
    }
    if (Number.isNaN(value)) return;
    this.sum[unit] = (this.sum[unit] as number) + value;
    this.counted[unit] = (this.counted[unit] as number) + 1;
  }

  /** Whether the value is surely on the move. */
  moves(unit: number): boolean {
    return Math.abs(this.z[unit] as number) > certain;
  }

  /**
   * Standard uncertainty of the slope, a second. Its interval comes of the order of the slopes and is of 95 %, so that half its width
   * is k u, with the k of as many degrees of freedom as a straight line through these means has.
   */
  slopeU(unit: number): number {
    const width = (this.upper[unit] as number) - (this.lower[unit] as number);
    return width / 2 / coverageFactorOf(this.degreesOfFreedom(unit));
  }

  /** n − 2 of the straight line (GUM H.3.2). */
  degreesOfFreedom(unit: number): number {
    const points = this.points[unit] as number;
    return Number.isNaN(points) ? Infinity : points - 2;
  }

  private close(unit: number): void {
    const { length, stepMs } = this.options;
    const counted = this.counted[unit] as number;
    // A mean of a few samples at an end of an outage stands for no step.
    if (counted < stepMs / 10_000) return;
    const step = this.step[unit] as number;
    const place = unit * length + (step % length);
    this.means[place] = (this.sum[unit] as number) / counted;
    this.steps[place] = step;
    this.workOut(unit, step);
  }

  private workOut(unit: number, newest: number): void {
    const { length, stepMs } = this.options;
    const x: number[] = [];
    const y: number[] = [];
    for (let step = newest - length + 1; step <= newest; step += 1) {
      const place = unit * length + (((step % length) + length) % length);
      if (this.steps[place] !== step) continue;
      x.push((step * stepMs) / 1000);
      y.push(this.means[place] as number);
    }
    if (x.length < fewest) {
      this.forget(unit);
      return;
    }
    const { slope, lower, upper } = theilSen(x, y, x.length);
    this.slope[unit] = slope;
    this.lower[unit] = lower;
    this.upper[unit] = upper;
    this.points[unit] = x.length;
    this.z[unit] = mannKendallZ(y, y.length);
    this.spanS[unit] = (x[x.length - 1] ?? 0) - (x[0] ?? 0);
  }

  /** Means that would stand in the window beside that of the step after `newest`. */
  private counts(unit: number, newest: number): number {
    const { length } = this.options;
    let count = 0;
    for (let place = unit * length; place < (unit + 1) * length; place += 1) {
      const behind = newest - (this.steps[place] as number);
      if (behind >= 0 && behind < length - 1) count += 1;
    }
    return count;
  }

  /** What a slope was before an outage says nothing of now: it is unknown until there are enough means again. */
  private forget(unit: number): void {
    for (const column of [this.slope, this.lower, this.upper, this.z, this.spanS, this.points])
      column[unit] = Number.NaN;
  }
}

/** A share of a step, different from unit to unit (golden ratio). */
const spread = (unit: number): number => (unit * 0.618033988749895) % 1;
