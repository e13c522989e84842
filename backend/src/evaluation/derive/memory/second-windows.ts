import { RecentBends } from './recent-bends';

const mask = 63;

/** Longest window, s. */
export const windowSeconds = mask + 1;

/**
 * The last 64 seconds of many signals in one array, written in order and read by age: 0 is the newest. NaN where
 * nothing was known. Beside them the noise of each signal.
 */
export class SecondWindows {
  private readonly values: Float32Array;
  private readonly heads: Uint8Array;
  /** Noise of each signal by the last minute. */
  private readonly bends: RecentBends;

  constructor(signals: number) {
    this.values = new Float32Array(signals * windowSeconds).fill(Number.NaN);
    this.heads = new Uint8Array(signals);
    this.bends = new RecentBends(signals);
  }

  push(signal: number, value: number): void {
    const first = signal * windowSeconds;
    const head = this.heads[signal] as number;
    const last = this.values[first + head] as number;
    const bend = value - 2 * last + (this.values[first + ((head - 1) & mask)] as number);
    if (!Number.isNaN(bend)) this.bends.push(signal, bend);
    const next = (head + 1) & mask;
    this.heads[signal] = next;
    this.values[first + next] = value;
  }

  /** The value `age` seconds ago; `age` below 64. */
  at(signal: number, age: number): number {
    return this.values[signal * windowSeconds + (((this.heads[signal] as number) - age) & mask)] as number;
  }

  /** Sum of `count` values, the newest of them `age` seconds old. */
  private sum(signal: number, age: number, count: number): number {
    const first = signal * windowSeconds;
    const from = (this.heads[signal] as number) - age;
    let sum = 0;
    for (let i = 0; i < count; i += 1) sum += this.values[first + ((from - i) & mask)] as number;
    return sum;
  }

  mean(signal: number, age: number, count: number): number {
    return this.sum(signal, age, count) / count;
  }

  /** Rate of change a second over twice `half` seconds: mean of the newer half less that of the older one. NaN where a value is. */
  slope(signal: number, half: number): number {
    return (this.sum(signal, 0, half) - this.sum(signal, half, half)) / (half * half);
  }

  /** Mean of twice `half` seconds with the weights by which `slope` counts their changes: 1, 2 … half … 2, 1. */
  triangular(signal: number, half: number): number {
    const first = signal * windowSeconds;
    const head = this.heads[signal] as number;
    let sum = 0;
    for (let age = 0; age < 2 * half - 1; age += 1)
      sum += (half - Math.abs(age - half + 1)) * (this.values[first + ((head - age) & mask)] as number);
    return sum / (half * half);
  }

  /**
   * Standard deviation of one sample by its second differences, which have six times the variance of white noise; a steady slope
   * leaves them alone. 0 for a signal that never moved, NaN before the third.
   */
  noise(signal: number): number {
    return Math.sqrt(this.bends.variance(signal) / 6);
  }

  /**
   * Degrees of freedom of the noise: 18/35 of the second differences that it rests on, as neighbours share samples (their correlations
   * −2/3 and 1/6: 1 + 2 (4/9 + 1/36) = 35/18).
   */
  noiseDegreesOfFreedom(signal: number): number {
    return Math.max(1, (this.bends.count(signal) * 18) / 35);
  }

  /** What the noise of single samples makes of `slope`: σ √(2/half)/half. */
  slopeNoise(signal: number, half: number): number {
    return (this.noise(signal) * Math.sqrt(2 / half)) / half;
  }

  /** What lies before a gap is no longer comparable. The noise stays known. */
  forget(first: number, count: number): void {
    this.values.fill(Number.NaN, first * windowSeconds, (first + count) * windowSeconds);
  }
}
