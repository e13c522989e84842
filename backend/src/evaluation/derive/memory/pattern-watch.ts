import { addToMoments } from '@ebbline/shared/statistics/co-moments';
import { patternSignals } from '../watched-signals';
import { makePattern, type Pattern } from './pattern';

const size = patternSignals.length;
const cells = size * size;
const sample = new Float64Array(size);

/** The pattern in which the main signals of each unit move, learnt from the good means; it then stands still. */
export class PatternWatch {
  private readonly count: Float64Array;
  private readonly mean: Float64Array;
  private readonly products: Float64Array;
  /** Distance along and off the pattern of the last mean, over their limits. */
  readonly along: Float64Array;
  readonly off: Float64Array;
  /** Worked out again from what was learnt: not remembered. */
  private readonly patterns: (Pattern | undefined)[];

  constructor(units: number) {
    this.count = new Float64Array(units);
    this.mean = new Float64Array(units * size);
    this.products = new Float64Array(units * cells);
    this.along = new Float64Array(units).fill(Number.NaN);
    this.off = new Float64Array(units).fill(Number.NaN);
    this.patterns = new Array<Pattern | undefined>(units).fill(undefined);
  }

  forget(unit: number): void {
    this.count[unit] = 0;
    this.mean.fill(0, unit * size, (unit + 1) * size);
    this.products.fill(0, unit * cells, (unit + 1) * cells);
    this.along[unit] = Number.NaN;
    this.off[unit] = Number.NaN;
    this.patterns[unit] = undefined;
  }

  isLearnt(unit: number, wanted: number): boolean {
    return (this.count[unit] as number) >= wanted;
  }

  /** Takes one mean of every signal that the unit has (`has`, by place); a mean that lacks one of them is left out. */
  take(unit: number, meanOf: (signal: number) => number, has: readonly boolean[], wanted: number): void {
    for (let i = 0; i < size; i += 1) sample[i] = has[i] === true ? meanOf(i) : 0;
    this.along[unit] = Number.NaN;
    this.off[unit] = Number.NaN;
    if (sample.some(Number.isNaN)) return;
    if (this.isLearnt(unit, wanted)) this.judge(unit);
    else this.learn(unit);
  }

  private learn(unit: number): void {
    const count = (this.count[unit] as number) + 1;
    this.count[unit] = count;
    this.patterns[unit] = undefined;
    addToMoments(sample, count, this.meanOf(unit), this.productsOf(unit));
  }

  private judge(unit: number): void {
    const pattern = (this.patterns[unit] ??= makePattern(
      this.meanOf(unit),
      this.productsOf(unit),
      this.count[unit] as number,
    ));
    const { along, off } = pattern.judge(sample);
    this.along[unit] = along;
    this.off[unit] = off;
  }

  private meanOf(unit: number): Float64Array {
    return this.mean.subarray(unit * size, (unit + 1) * size);
  }

  private productsOf(unit: number): Float64Array {
    return this.products.subarray(unit * cells, (unit + 1) * cells);
  }
}
