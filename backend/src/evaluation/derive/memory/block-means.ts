import { blockMs, lookMs, watchedSignals } from '../watched-signals';

const size = watchedSignals.length;
/** Of the looks of a block so many must have found a value. */
const enough = (0.8 * blockMs) / lookMs;

/** Means of ten minutes of every watched signal of each unit. */
export class BlockMeans {
  /** Mean of the last whole block, signal by signal; NaN where too little of it was known. */
  readonly mean: Float64Array;
  /** Number of the last whole block since 1970; NaN before the first. */
  readonly closed: Float64Array;
  private readonly open: Float64Array;
  private readonly sum: Float64Array;
  private readonly counted: Float64Array;
  private readonly looked: Float64Array;

  constructor(units: number) {
    const unknown = (cells: number): Float64Array => new Float64Array(cells).fill(Number.NaN);
    this.mean = unknown(units * size);
    this.closed = unknown(units);
    this.open = unknown(units);
    this.looked = unknown(units);
    this.sum = new Float64Array(units * size);
    this.counted = new Float64Array(units * size);
  }

  /** Whether this unit's turn to be looked at has come; each unit has its own, so that the work spreads. */
  isDue(unit: number, nowMs: number): boolean {
    const look = Math.floor((nowMs + 1000 * unit) / lookMs);
    if (this.looked[unit] === look) return false;
    this.looked[unit] = look;
    return true;
  }

  /** Begins a look; true where it ends a block, whose means then stand in `mean`. */
  begin(unit: number, nowMs: number): boolean {
    const block = Math.floor(nowMs / blockMs);
    const before = this.open[unit] as number;
    if (before === block) return false;
    this.open[unit] = block;
    const from = unit * size;
    for (let cell = from; cell < from + size; cell += 1) {
      const counted = this.counted[cell] as number;
      this.mean[cell] = counted >= enough ? (this.sum[cell] as number) / counted : Number.NaN;
      this.sum[cell] = 0;
      this.counted[cell] = 0;
    }
    if (Number.isNaN(before)) return false;
    this.closed[unit] = before;
    return true;
  }

  /** Takes what was seen of a signal; NaN is nothing. */
  take(unit: number, signal: number, value: number): void {
    if (Number.isNaN(value)) return;
    const cell = unit * size + signal;
    this.sum[cell] = (this.sum[cell] as number) + value;
    this.counted[cell] = (this.counted[cell] as number) + 1;
  }

  meanOf(unit: number, signal: number): number {
    return this.mean[unit * size + signal] as number;
  }
}
