/** `current`: number of the bucket that is being filled; NaN before the first sample. */
const Cell = { sum: 0, samples: 1, current: 2, mean: 3 } as const;
const cellCount = 4;

/**
 * Means over the last minutes or hours of many signals: values of one bucket of time are averaged, and the last closed
 * buckets are averaged in turn, so that an hour with few samples counts as much as one with many. Works at any rate of
 * samples; buckets in which nothing was known are left out. Written in place.
 */
export class BucketMeans {
  /** What is touched each second, `Cell` by signal: side by side, as each array more is a line of memory more. */
  private readonly cells: Float64Array;
  private readonly closed: Float64Array;

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
    this.cells = new Float64Array(signals * cellCount);
    this.closed = new Float64Array(signals * buckets).fill(Number.NaN);
    for (let first = 0; first < this.cells.length; first += cellCount)
      this.cells[first + Cell.current] = this.cells[first + Cell.mean] = Number.NaN;
  }

  /** Takes a value at tick time `nowMs`; NaN counts as not known. */
  push(signal: number, value: number, nowMs: number): void {
    const { cells } = this;
    const first = signal * cellCount;
    const bucket = Math.floor(nowMs / this.bucketMs);
    if (bucket !== cells[first + Cell.current]) this.turnTo(signal, bucket);
    if (Number.isNaN(value)) return;
    cells[first + Cell.sum] = (cells[first + Cell.sum] as number) + value;
    cells[first + Cell.samples] = (cells[first + Cell.samples] as number) + 1;
  }

  /** Mean of the closed buckets; NaN where too few of them are known. */
  mean(signal: number): number {
    return this.cells[signal * cellCount + Cell.mean] as number;
  }

  forget(signal: number): void {
    this.cells[signal * cellCount + Cell.current] = Number.NaN;
    this.closed.fill(Number.NaN, signal * this.buckets, (signal + 1) * this.buckets);
    this.cells[signal * cellCount + Cell.mean] = Number.NaN;
    this.empty(signal);
  }

  private turnTo(signal: number, bucket: number): void {
    const { cells } = this;
    const first = signal * cellCount;
    const filled = cells[first + Cell.current] as number;
    cells[first + Cell.current] = bucket;
    if (!Number.isNaN(filled) && bucket > filled) {
      const samples = cells[first + Cell.samples] as number;
      this.put(signal, filled, samples === 0 ? Number.NaN : (cells[first + Cell.sum] as number) / samples);
      const skipped = Math.min(bucket - filled - 1, this.buckets);
      for (let i = 1; i <= skipped; i += 1) this.put(signal, bucket - i, Number.NaN);
      cells[first + Cell.mean] = this.average(signal);
    }
    this.empty(signal);
  }

  private put(signal: number, bucket: number, value: number): void {
    this.closed[signal * this.buckets + (bucket % this.buckets)] = value;
  }

  private empty(signal: number): void {
    this.cells[signal * cellCount + Cell.sum] = 0;
    this.cells[signal * cellCount + Cell.samples] = 0;
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
