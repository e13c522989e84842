import type { HistoryBuckets } from '../../ports/history-store';
import type { BucketPlan } from './history-query';

/** Adds up what a store found, bucket by bucket, and gives it back as the port's columns. */
export class BucketSums {
  readonly #plan: BucketPlan;
  readonly #min: Float64Array;
  readonly #max: Float64Array;
  readonly #sum: Float64Array;
  readonly #count: Float64Array;
  #minutes: boolean;

  constructor(plan: BucketPlan) {
    this.#plan = plan;
    this.#minutes = plan.byMinute;
    this.#min = new Float64Array(plan.count).fill(NaN);
    this.#max = new Float64Array(plan.count).fill(NaN);
    this.#sum = new Float64Array(plan.count);
    this.#count = new Float64Array(plan.count);
  }

  /** `count` values with that sum, least and greatest; buckets outside the plan are a mistake of the store. */
  add(bucket: number, min: number, sum: number, max: number, count: number): void {
    if (count === 0) return;
    if (!(bucket >= 0 && bucket < this.#plan.count)) throw new RangeError(`bucket ${bucket} of ${this.#plan.count}`);
    const first = this.#count[bucket] === 0;
    this.#min[bucket] = first ? min : Math.min(this.#min[bucket] ?? NaN, min);
    this.#max[bucket] = first ? max : Math.max(this.#max[bucket] ?? NaN, max);
    this.#sum[bucket] = (this.#sum[bucket] ?? 0) + sum;
    this.#count[bucket] = (this.#count[bucket] ?? 0) + count;
  }

  /** Says that some of it was 1-minute figures. */
  usedMinutes(): void {
    this.#minutes = true;
  }

  buckets(): HistoryBuckets {
    const { fromMs, bucketMs, count } = this.#plan;
    return {
      bucketMs,
      resolution: this.#minutes ? 'minute' : 'second',
      startMs: Float64Array.from({ length: count }, (_, bucket) => fromMs + bucket * bucketMs),
      min: this.#min,
      mean: this.#sum.map((sum, bucket) => (this.#count[bucket] === 0 ? NaN : sum / (this.#count[bucket] ?? NaN))),
      max: this.#max,
      count: this.#count,
    };
  }
}
