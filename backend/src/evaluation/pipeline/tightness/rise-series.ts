import { lineFit, type LineFit } from '@ebbline/shared/statistics/line-fit';

/** A mean stands for so long, s: three time constants of a thermometer in its pocket, so that neighbours are independent. Own rule. */
export const blockS = 30;

/** What one second of a test measured. */
export interface RiseSample {
  /** Seconds since the test began. */
  readonly atS: number;
  /** (p − p_v) V / T of the gas, Pa m³/K. */
  readonly gas: number;
  readonly volumeM3: number;
  readonly temperatureK: number;
  readonly levelM: number;
}

/** The gas of a closed volume over a test, as means of half a minute. */
export class RiseSeries {
  readonly atS: number[] = [];
  readonly gas: number[] = [];
  readonly volumeM3: number[] = [];
  readonly temperatureK: number[] = [];
  readonly levelM: number[] = [];
  samples = 0;
  private block = 0;
  private counted = 0;
  private readonly sums = [0, 0, 0, 0, 0];

  /** Takes a sample; true where a mean was made of those before it. */
  push({ atS, gas, volumeM3, temperatureK, levelM }: RiseSample): boolean {
    const block = Math.floor(atS / blockS);
    const closed = block !== this.block && this.close();
    this.block = block;
    const values = [atS, gas, volumeM3, temperatureK, levelM];
    for (const [i, value] of values.entries()) this.sums[i] = (this.sums[i] as number) + value;
    this.counted += 1;
    this.samples += 1;
    return closed;
  }

  /** A mean of few samples, at an end or beside a gap, would count as much as a whole one: left out. */
  private close(): boolean {
    const { counted, sums } = this;
    const whole = counted >= blockS / 3;
    if (whole) {
      const series = [this.atS, this.gas, this.volumeM3, this.temperatureK, this.levelM];
      for (const [i, one] of series.entries()) one.push((sums[i] as number) / counted);
    }
    sums.fill(0);
    this.counted = 0;
    return whole;
  }

  get blocks(): number {
    return this.gas.length;
  }

  /** The line through the means from one up to another. */
  line(from = 0, to = this.blocks): LineFit {
    return lineFit(this.atS, this.gas, from, to);
  }

  /** Seconds between the first mean and the last. */
  spanS(): number {
    return (this.atS.at(-1) ?? Number.NaN) - (this.atS[0] ?? Number.NaN);
  }
}

export const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
