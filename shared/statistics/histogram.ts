/** How many of a run of figures were at most each bound, with their number and sum. Memory is as large as the bounds. */
export class Histogram {
  private readonly counts: Float64Array;
  private total = 0;
  private added = 0;

  /** @param bounds upper bounds, rising; the last, above all, is counted by itself */
  constructor(readonly bounds: readonly number[]) {
    this.counts = new Float64Array(bounds.length + 1);
  }

  /** @param times as if the figure had come so often */
  observe(value: number, times = 1): void {
    let place = 0;
    while (place < this.bounds.length && value > (this.bounds[place] as number)) place += 1;
    this.counts[place] = (this.counts[place] as number) + times;
    this.total += times;
    this.added += value * times;
  }

  /** How many were at most each bound; the last is the number of all. */
  cumulative(): readonly number[] {
    let sum = 0;
    return Array.from(this.counts, (count) => (sum += count));
  }

  get count(): number {
    return this.total;
  }

  get sum(): number {
    return this.added;
  }
}
