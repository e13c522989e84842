import type { CompiledSite } from '../../site/compiled-site';
import type { SlotState } from '../../slots/slot-state';
import { DeriveMemory } from './derive-memory';

const memories = new WeakMap<SlotState, DeriveMemory>();

/** What is remembered beside the newest values: one with them, made on first use, so that whoever owns the values owns both. */
export function deriveMemoryOf(site: CompiledSite, state: SlotState): DeriveMemory {
  const known = memories.get(state);
  if (known !== undefined) return known;
  const made = new DeriveMemory(site.units.length);
  memories.set(state, made);
  return made;
}
