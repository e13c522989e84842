/** Means of one or more readings over blocks of equal length, with the least and the greatest value of each. */
export class MeanSeries {
  readonly atS: number[] = [];
  readonly means: readonly number[][];
  readonly least: number[];
  readonly most: number[];
  /** Samples in which a reading had no value: least and most know nothing of them. */
  readonly unseen: number[];
  samples = 0;
  private readonly totals: number[];
  private block = 0;
  private counted = 0;
  private sumS = 0;
  private readonly sums: number[];

  /** @param blockS seconds that a mean stands for */
  constructor(
    readings: number,
    private readonly blockS: number,
  ) {
    this.means = Array.from({ length: readings }, () => []);
    this.sums = new Array<number>(readings).fill(0);
    this.totals = new Array<number>(readings).fill(0);
    this.least = new Array<number>(readings).fill(Infinity);
    this.most = new Array<number>(readings).fill(-Infinity);
    this.unseen = new Array<number>(readings).fill(0);
  }

  /** Looks at what is known now, whether it may go into a mean or not: the dip that shuts a gate is the one that is judged. */
  look(values: readonly number[]): void {
    for (const [i, value] of values.entries()) {
      if (Number.isNaN(value)) this.unseen[i] = (this.unseen[i] as number) + 1;
      else {
        this.least[i] = Math.min(this.least[i] as number, value);
        this.most[i] = Math.max(this.most[i] as number, value);
      }
    }
  }

  /** Takes one sample of each reading into the means, so many seconds after the begin. */
  push(atS: number, values: readonly number[]): void {
    const block = Math.floor(atS / this.blockS);
    if (block !== this.block) this.close();
    this.block = block;
    this.counted += 1;
    this.samples += 1;
    this.sumS += atS;
    for (const [i, value] of values.entries()) {
      this.sums[i] = (this.sums[i] as number) + value;
      this.totals[i] = (this.totals[i] as number) + value;
    }
  }

  /** A mean of few samples, at an end or beside a gap, would count as much as a whole one: left out. */
  private close(): void {
    if (this.counted >= this.blockS / 2) {
      this.atS.push(this.sumS / this.counted);
      for (const [i, means] of this.means.entries()) means.push((this.sums[i] as number) / this.counted);
    }
    this.sums.fill(0);
    this.sumS = 0;
    this.counted = 0;
  }

  /** Mean of all samples, for a step too short for means of its own; NaN before the first. */
  overall(reading: number): number {
    return (this.totals[reading] ?? Number.NaN) / this.samples;
  }

  /** Place of the first mean of the newest `windowS` seconds. */
  windowFrom(windowS: number): number {
    return Math.max(0, this.atS.length - Math.round(windowS / this.blockS));
  }
}
