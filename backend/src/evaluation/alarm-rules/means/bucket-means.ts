/**
 * Means over the last minutes or hours of many signals: values of one bucket of time are averaged, and the last closed
 * buckets are averaged in turn, so that an hour with few samples counts as much as one with many. Works at any rate of
 * samples; buckets in which nothing was known are left out. Written in place.
 */
export class BucketMeans {
  private readonly sum: Float64Array;
  private readonly samples: Uint32Array;
  /** Number of the bucket that is being filled; NaN before the first sample. */
  private readonly current: Float64Array;
  private readonly closed: Float64Array;
  private readonly means: Float64Array;

  /**
   * @param bucketMs length of one bucket
   * @param buckets how many closed buckets make the mean
   * @param least of so many something must be known, or the mean is not
   */
  constructor(
    signals: number,
    readonly bucketMs: number,
    readonly buckets: number,
    readonly least: number,
  ) {
    this.sum = new Float64Array(signals);
    this.samples = new Uint32Array(signals);
    this.current = new Float64Array(signals).fill(Number.NaN);
    this.closed = new Float64Array(signals * buckets).fill(Number.NaN);
    this.means = new Float64Array(signals).fill(Number.NaN);
  }

  /** Takes a value at tick time `nowMs`; NaN counts as not known. */
  push(signal: number, value: number, nowMs: number): void {
    const bucket = Math.floor(nowMs / this.bucketMs);
    if (bucket !== this.current[signal]) this.turnTo(signal, bucket);
    if (Number.isNaN(value)) return;
    this.sum[signal] = (this.sum[signal] as number) + value;
    this.samples[signal] = (this.samples[signal] as number) + 1;
  }

  /** Mean of the closed buckets; NaN where too few of them are known. */
  mean(signal: number): number {
    return this.means[signal] as number;
  }

  forget(signal: number): void {
    this.current[signal] = Number.NaN;
    this.closed.fill(Number.NaN, signal * this.buckets, (signal + 1) * this.buckets);
    this.means[signal] = Number.NaN;
    this.empty(signal);
  }

  private turnTo(signal: number, bucket: number): void {
    const filled = this.current[signal] as number;
    this.current[signal] = bucket;
    if (!Number.isNaN(filled) && bucket > filled) {
      const samples = this.samples[signal] as number;
      this.put(signal, filled, samples === 0 ? Number.NaN : (this.sum[signal] as number) / samples);
      const skipped = Math.min(bucket - filled - 1, this.buckets);
      for (let i = 1; i <= skipped; i += 1) this.put(signal, bucket - i, Number.NaN);
      this.means[signal] = this.average(signal);
    }
    this.empty(signal);
  }

  private put(signal: number, bucket: number, value: number): void {
    this.closed[signal * this.buckets + (bucket % this.buckets)] = value;
  }

  private empty(signal: number): void {
    this.sum[signal] = 0;
    this.samples[signal] = 0;
  }

  private average(signal: number): number {
    let sum = 0;
    let known = 0;
    for (let place = signal * this.buckets; place < (signal + 1) * this.buckets; place += 1) {
      const value = this.closed[place] as number;
      if (Number.isNaN(value)) continue;
      sum += value;
      known += 1;
    }
    return known < this.least ? Number.NaN : sum / known;
  }
}

const minuteMs = 60_000;
const hourMs = 3_600_000;

/** Means of the last day, by hours; known from half a day on. */
export const dayMeans = (signals: number): BucketMeans => new BucketMeans(signals, hourMs, 24, 12);

/** Means of the last day, by hours; known from the first whole hour on. */
export const hourlyMeans = (signals: number): BucketMeans => new BucketMeans(signals, hourMs, 24, 1);

/** Means of the last ten minutes, by minutes; known from five of them on. */
export const tenMinuteMeans = (signals: number): BucketMeans => new BucketMeans(signals, minuteMs, 10, 5);
