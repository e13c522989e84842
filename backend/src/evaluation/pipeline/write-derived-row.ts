import type { Holder } from '../site/compiled-site';
import type { PipelineState } from './pipeline-state';

/** Derived values stand in the second of the tick. */
export function writeDerivedRow(pipeline: PipelineState, holderIndex: number, nowMs: number): void {
  const { history, site, state } = pipeline;
  const holder = site.holders[holderIndex] as Holder;
  for (let slot = holder.firstSlot; slot < holder.firstSlot + holder.slotCount; slot += 1) {
    if (site.slots.measured[slot] === 1) continue;
    history.put(slot, nowMs, state.value[slot] as number, state.reasons[slot] as number);
  }
}
