import { badBits, reasonBit } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';

const nothingBits = reasonBit.notApplicable | reasonBit.notSet | reasonBit.undefined;

/** The point does not apply now, or its quantity is too small to say anything: all is known, and there is nothing to judge. */
export function saysNothing(state: SlotState, slot: number): boolean {
  if (slot < 0) return false;
  const bad = (state.reasons[slot] as number) & badBits;
  return bad !== 0 && (bad & ~nothingBits) === 0;
}
