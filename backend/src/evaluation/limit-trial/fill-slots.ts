import { isStale, shortestMs } from '../quality/stale';
import { Origin, type CompiledSite } from '../site/compiled-site';
import { badBits, reasonBit } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import type { TrialColumns } from './trial-columns';

const mark = { nothing: 0, good: 1, uncertain: 2 } as const;

/** Longer than a rate, or water on its way, takes until it is known: before that a derived point may just be warming, ms. Own rule. */
const warmMs = 120_000;

/**
 * Puts recorded points into slots, as they stood then. History tells good, uncertain and bad and no longer why, so one reason
 * stands for each. A measured value holds until it is stale, as it does live. A derived point that has nothing while the
 * program ran did not apply; while nothing was recorded at all it is not known. Bad while all that is measured for it has been there
 * for a while, it was too small to say anything (or its inputs contradicted each other, which history can't tell apart).
 */
export class SlotFiller {
  private readonly quietMs: number;
  private readonly measured: readonly number[];
  private readonly derived: readonly number[];
  /** By derived slot: since when all behind it is known. */
  private readonly knownFromMs = new Map<number, number>();
  private heardMs = Number.NEGATIVE_INFINITY;

  constructor(
    private readonly site: CompiledSite,
    private readonly state: SlotState,
    private readonly slots: Int32Array,
    /** What is measured for a derived slot, all of it among `slots`; of one that is not named nothing is known of why it is bad. */
    private readonly behind: ReadonlyMap<number, readonly number[]> = new Map(),
  ) {
    this.quietMs = shortestMs;
    const columns = [...slots.keys()];
    const isDerived = (column: number): boolean => site.slots.measured[slots[column] as number] === Origin.derived;
    this.measured = columns.filter((column) => !isDerived(column));
    this.derived = columns.filter(isDerived);
  }

  /** False where nothing was recorded at that time, nor shortly before. */
  fill({ quality, stepMs, values }: TrialColumns, place: number, nowMs: number): boolean {
    const { slots } = this;
    for (let column = 0; column < slots.length; column += 1)
      if ((quality[column] as Uint8Array)[place] !== mark.nothing) this.heardMs = nowMs;
    const runs = nowMs - this.heardMs <= Math.max(this.quietMs, stepMs);
    const toldOf = (column: number): number => (quality[column] as Uint8Array)[place] as number;
    const valueOf = (column: number): number => (values[column] as Float64Array)[place] as number;
    for (const column of this.measured)
      this.putMeasured(slots[column] as number, valueOf(column), toldOf(column), nowMs);
    for (const column of this.derived) {
      const slot = slots[column] as number;
      const isKnown = this.isKnownBehind(slot, runs, nowMs);
      this.putDerived(slot, valueOf(column), toldOf(column), runs, isKnown);
    }
    return runs;
  }

  private isKnownBehind(slot: number, runs: boolean, nowMs: number): boolean {
    const behind = this.behind.get(slot);
    if (behind === undefined || behind.length === 0) return false;
    const isKnown = runs && behind.every((one) => ((this.state.reasons[one] as number) & badBits) === 0);
    if (!isKnown) this.knownFromMs.delete(slot);
    else if (!this.knownFromMs.has(slot)) this.knownFromMs.set(slot, nowMs);
    return isKnown && nowMs - (this.knownFromMs.get(slot) as number) >= warmMs;
  }

  private putDerived(slot: number, value: number, told: number, runs: boolean, isKnown: boolean): void {
    const { state } = this;
    state.value[slot] = value;
    if (told === mark.good) state.reasons[slot] = 0;
    else if (told === mark.uncertain) state.reasons[slot] = reasonBit.inputUncertain;
    else if (told === mark.nothing && runs) state.reasons[slot] = reasonBit.notApplicable;
    else state.reasons[slot] = isKnown ? reasonBit.undefined : reasonBit.inputBad;
  }

  private putMeasured(slot: number, value: number, told: number, nowMs: number): void {
    const { state } = this;
    if (told === mark.nothing) {
      if (isStale(this.site.slots, slot, state.acceptedMs[slot] as number, nowMs))
        state.reasons[slot] = (state.reasons[slot] as number) | reasonBit.stale;
      return;
    }
    if (value !== state.value[slot]) state.unchangedSinceMs[slot] = nowMs;
    state.value[slot] = value;
    state.sourceMs[slot] = nowMs;
    state.acceptedMs[slot] = nowMs;
    state.reasons[slot] =
      told === mark.good ? 0 : told === mark.uncertain ? reasonBit.inputUncertain : reasonBit.senderFlag;
  }
}
