import { addToMoments } from '@ebbline/shared/statistics/co-moments';
import { cusumAbove, cusumBelow } from '@ebbline/shared/statistics/cusum';
import { cusumLimit } from '@ebbline/shared/statistics/run-length';
import { shiftSignals } from '../watched-signals';

const size = shiftSignals.length;
const one = new Float64Array(1);

/** Half of the smallest shift that is sought, in standard deviations: the usual 1/2 (Montgomery, Introduction to Statistical Quality Control, 9.1). */
const allowance = 0.5;

/** Means between two false signals of one figure: with six figures and a mean every ten minutes, a year for a unit. Own rule. */
const runLength = 6 * 52_560;

/** H in standard deviations for that. */
export const shiftLimit = cusumLimit(allowance, runLength);

/**
 * Tabular CUSUM of each figure of each unit. Mean and spread are learnt from the good means and then stand still, so that a
 * chart never learns the fault; the sums say how far the figure has gone since.
 */
export class ShiftWatch {
  private readonly count: Float64Array;
  private readonly mean: Float64Array;
  private readonly squares: Float64Array;
  private readonly above: Float64Array;
  private readonly below: Float64Array;

  constructor(units: number) {
    const none = (): Float64Array => new Float64Array(units * size);
    this.count = none();
    this.mean = none();
    this.squares = none();
    this.above = none();
    this.below = none();
  }

  forget(unit: number): void {
    for (const cells of [this.count, this.mean, this.squares, this.above, this.below])
      cells.fill(0, unit * size, (unit + 1) * size);
  }

  /** Takes one mean; the first `wanted` of a figure are learnt from. NaN is left out. */
  take(unit: number, signal: number, value: number, wanted: number): void {
    if (Number.isNaN(value)) return;
    const cell = unit * size + signal;
    if ((this.count[cell] as number) < wanted) this.learn(cell, value);
    else this.chart(cell, value);
  }

  isLearnt(unit: number, signal: number, wanted: number): boolean {
    return (this.count[unit * size + signal] as number) >= wanted;
  }

  /** The larger sum over its limit, with the sign of the way it went; NaN where what was learnt from had no spread. */
  share(unit: number, signal: number): number {
    const cell = unit * size + signal;
    const limit = shiftLimit * this.deviation(cell);
    const [above, below] = [this.above[cell] as number, this.below[cell] as number];
    return limit > 0 ? (above >= below ? above : -below) / limit : Number.NaN;
  }

  private learn(cell: number, value: number): void {
    one[0] = value;
    const count = (this.count[cell] as number) + 1;
    this.count[cell] = count;
    addToMoments(one, count, this.mean.subarray(cell, cell + 1), this.squares.subarray(cell, cell + 1));
  }

  private chart(cell: number, value: number): void {
    const target = this.mean[cell] as number;
    const slack = allowance * this.deviation(cell);
    this.above[cell] = cusumAbove(this.above[cell] as number, value, target, slack);
    this.below[cell] = cusumBelow(this.below[cell] as number, value, target, slack);
  }

  private deviation(cell: number): number {
    return Math.sqrt((this.squares[cell] as number) / ((this.count[cell] as number) - 1));
  }
}
