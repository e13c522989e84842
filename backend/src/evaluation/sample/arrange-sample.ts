import type { SlotState } from '../slots/slot-state';

/**
 * How a sample stands to what its slot holds:
 * - `newer`: it becomes the slot's value.
 * - `corrected`: same source time, another value; it replaces the value, but does not make it fresher.
 * - `repeated`: same source time, same value; counted only.
 * - `late`: older than the slot, as after a sender's clock stepped back; to history only.
 */
export type Arrangement = 'newer' | 'corrected' | 'repeated' | 'late';

export function arrangeSample(
  state: SlotState,
  ownValue: Float64Array,
  slot: number,
  sourceMs: number,
  own: number,
): Arrangement {
  const held = state.sourceMs[slot] ?? Number.NaN;
  if (sourceMs < held) return 'late';
  if (sourceMs === held) return own === ownValue[slot] ? 'repeated' : 'corrected';
  return 'newer';
}
