import type { HistorySeconds } from '../../ports/history-store';
import { secondMs, type SecondsPlan } from './history-query';

const nothing = 0;
const good = 1;

/** Puts together what a store found, second by second, in the order in which it was written. */
export class SecondColumns {
  readonly #plan: SecondsPlan;
  readonly #values: readonly Float64Array[];
  readonly #quality: readonly Uint8Array[];

  constructor(plan: SecondsPlan) {
    this.#plan = plan;
    this.#values = plan.columns.map(() => new Float64Array(plan.count).fill(NaN));
    this.#quality = plan.columns.map(() => new Uint8Array(plan.count));
  }

  placeOf(ms: number): number {
    return Math.floor((ms - this.#plan.fromMs) / secondMs);
  }

  /** One column to write to straight away, where a value is good and the only one of its second. */
  column(column: number): { readonly values: Float64Array; readonly quality: Uint8Array } {
    return {
      values: this.#values[column] ?? new Float64Array(),
      quality: this.#quality[column] ?? new Uint8Array(),
    };
  }

  /**
   * A later value takes the place of an earlier one with its quality; nothing and bad take no value away.
   * @param mark NaN or below zero: good where there is a value, nothing where there is none
   */
  put(column: number, place: number, value: number, mark: number): void {
    const values = this.#values[column];
    const quality = this.#quality[column];
    if (values === undefined || quality === undefined || !(place >= 0 && place < values.length)) return;
    const isThere = Number.isFinite(value);
    const told = mark >= 0 ? mark : isThere ? good : nothing;
    if (isThere) {
      values[place] = value;
      quality[place] = told === nothing ? good : told;
    } else if (told !== nothing && Number.isNaN(values[place])) {
      quality[place] = told;
    }
  }

  seconds(minutesBeforeMs: number): HistorySeconds {
    const { count, fromMs } = this.#plan;
    return { fromMs, count, values: this.#values, quality: this.#quality, minutesBeforeMs };
  }
}
