import { reasonBit } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import type { InputTally } from './input-tally';

/**
 * Writes one derived value to its slot. Bad inputs give no value; a value that is no number although the
 * inputs are good, or whose uncertainty has no bound, left the range of an equation. `expandedUncertainty` NaN = an input
 * states no accuracy.
 */
export function writeDerived(
  state: SlotState,
  slot: number,
  nowMs: number,
  tally: InputTally,
  value: number,
  expandedUncertainty: number,
  where: number,
): void {
  if (slot < 0) return;
  if (tally.budget !== null) tally.budget.close(slot);
  const bad = tally.isBad();
  const usable = !bad && Number.isFinite(value) && expandedUncertainty !== Infinity;
  const kept = usable ? value : Number.NaN;
  if (state.value[slot] !== kept) state.unchangedSinceMs[slot] = nowMs;
  state.value[slot] = kept;
  state.reasons[slot] = usable || bad ? tally.reasons : tally.reasons | reasonBit.outOfRange;
  state.sourceMs[slot] = tally.oldestMs === Infinity ? Number.NaN : tally.oldestMs;
  state.acceptedMs[slot] = nowMs;
  state.expandedUncertainty[slot] = usable ? expandedUncertainty : Number.NaN;
  state.where[slot] = usable ? where : -1;
}
