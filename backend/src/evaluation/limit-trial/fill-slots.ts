import { isStale, shortestMs } from '../quality/stale';
import { Origin, type CompiledSite } from '../site/compiled-site';
import { reasonBit } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import type { TrialColumns } from './trial-columns';

const mark = { nothing: 0, good: 1, uncertain: 2 } as const;

/**
 * Puts recorded points into slots, as they stood then. History tells good, uncertain and bad and no longer why, so one reason
 * stands for each. A measured value holds until it is stale, as it does live. A derived point that has nothing while the
 * program ran did not apply; while nothing was recorded at all it is not known.
 */
export class SlotFiller {
  private readonly quietMs: number;
  private heardMs = Number.NEGATIVE_INFINITY;

  constructor(
    private readonly site: CompiledSite,
    private readonly state: SlotState,
    private readonly slots: Int32Array,
  ) {
    this.quietMs = shortestMs;
  }

  /** False where nothing was recorded at that time, nor shortly before. */
  fill({ quality, stepMs, values }: TrialColumns, place: number, nowMs: number): boolean {
    const { slots } = this;
    for (let column = 0; column < slots.length; column += 1)
      if ((quality[column] as Uint8Array)[place] !== mark.nothing) this.heardMs = nowMs;
    const runs = nowMs - this.heardMs <= Math.max(this.quietMs, stepMs);
    for (let column = 0; column < slots.length; column += 1) {
      const slot = slots[column] as number;
      const told = (quality[column] as Uint8Array)[place] as number;
      const value = (values[column] as Float64Array)[place] as number;
      if (this.site.slots.measured[slot] === Origin.derived) this.putDerived(slot, value, told, runs);
      else this.putMeasured(slot, value, told, nowMs);
    }
    return runs;
  }

  private putDerived(slot: number, value: number, told: number, runs: boolean): void {
    const { state } = this;
    state.value[slot] = value;
    if (told === mark.good) state.reasons[slot] = 0;
    else if (told === mark.uncertain) state.reasons[slot] = reasonBit.inputUncertain;
    else state.reasons[slot] = told === mark.nothing && runs ? reasonBit.notApplicable : reasonBit.inputBad;
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
