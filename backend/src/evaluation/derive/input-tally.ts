import { badBits, reasonBit } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import type { UncertaintyBudget } from './uncertainty-budget';

/** What is not there, or not yet, too small to divide by, or known to contradict itself is no fault of one input: it stays what it is along the way. */
const handedOnBits =
  reasonBit.notApplicable | reasonBit.notSet | reasonBit.warming | reasonBit.contradicted | reasonBit.undefined;

/**
 * Keeps count of the inputs of one derived value: a derived value is never better than its inputs and
 * never younger than the oldest of them. One object, used again for every value.
 */
export class InputTally {
  /** Bits of `reasonBit` for the derived value. */
  reasons = 0;
  /** Oldest source time of the inputs, ms; Infinity while none has one. */
  oldestMs = Infinity;
  /** Where the parts of its uncertainty are written while somebody asks for them. */
  budget: UncertaintyBudget | null = null;

  begin(): void {
    this.reasons = 0;
    this.oldestMs = Infinity;
  }

  /** The value behind a slot, NaN where it is bad; −1 = the site has no such point. */
  take(state: SlotState, slot: number): number {
    if (slot < 0) {
      this.reasons |= reasonBit.notApplicable;
      return Number.NaN;
    }
    const reasons = state.reasons[slot] ?? 0;
    const sourceMs = state.sourceMs[slot] ?? Number.NaN;
    if (sourceMs < this.oldestMs) this.oldestMs = sourceMs;
    if (reasons === 0) return state.value[slot] ?? Number.NaN;
    if ((reasons & badBits) !== 0) {
      const handedOn = reasons & handedOnBits;
      this.reasons |= handedOn !== 0 ? handedOn : reasonBit.inputBad;
      return Number.NaN;
    }
    this.reasons |= reasons & reasonBit.ambientEstimated;
    if ((reasons & ~reasonBit.ambientEstimated) !== 0) this.reasons |= reasonBit.inputUncertain;
    return state.value[slot] ?? Number.NaN;
  }

  /** Adds an input that is no slot's. */
  note(reasons: number, sourceMs: number): void {
    this.reasons |= reasons;
    if (sourceMs < this.oldestMs) this.oldestMs = sourceMs;
  }

  isBad(): boolean {
    return (this.reasons & badBits) !== 0;
  }
}
