import { badBits, reasonBit, uncertainBits } from '../../evaluation/slots/quality-reasons';
import type { SlotState } from '../../evaluation/slots/slot-state';
import type { StoredDerived } from './recorded-second';

/** Reasons for which a point leaves no mark in history. */
const absentBits = reasonBit.notReceived | reasonBit.notApplicable | reasonBit.notSet;
/** What is worked out from one second alone lacks what the program remembered then: these say nothing of then. */
const ofMemory = reasonBit.warming | reasonBit.contradicted;
/** Where no accuracy is stated, the same to so many parts is the same. */
const sameWithin = 1e-6;

/**
 * Puts a derived value as it was stored over what was just worked out anew from what was measured. Of the latter is kept what
 * history has not, and only where both agree: the uncertainty, the place that decides, why it was bad or uncertain.
 */
export function putDerived(state: SlotState, { slot, mark, value, atMs }: StoredDerived): void {
  const anew = state.reasons[slot] ?? 0;
  const agrees = agree(value, state.value[slot] ?? Number.NaN, state.expandedUncertainty[slot] ?? Number.NaN);
  state.reasons[slot] = reasonsOf(mark, anew);
  state.value[slot] = value;
  if (Number.isNaN(value) || !agrees) {
    state.expandedUncertainty[slot] = Number.NaN;
    state.degreesOfFreedom[slot] = Infinity;
    state.where[slot] = -1;
  }
  state.acceptedMs[slot] = atMs;
  if (!((state.sourceMs[slot] as number) <= atMs) || Number.isNaN(atMs)) state.sourceMs[slot] = atMs;
}

function reasonsOf(mark: number, anew: number): number {
  const told = anew & ~ofMemory;
  if (mark < 0) return anew & absentBits & ~reasonBit.notReceived || reasonBit.notRecorded;
  if (mark === 0) return anew & absentBits || reasonBit.notApplicable;
  if (mark === 1) return 0;
  if (mark === 2) return told & uncertainBits || reasonBit.uncertainThen;
  return told & badBits & ~absentBits || reasonBit.badThen;
}

/** Within half of the uncertainty for 95.45 %, which is the standard uncertainty. */
const agree = (stored: number, anew: number, expanded: number): boolean =>
  Math.abs(stored - anew) <= Math.max(Number.isNaN(expanded) ? 0 : expanded / 2, sameWithin * Math.abs(stored));
