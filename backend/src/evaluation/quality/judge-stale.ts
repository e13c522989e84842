import type { CompiledSite } from '../site/compiled-site';
import { reasonBit } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import { isStale, shortestMs } from './stale';

/**
 * Marks the measured points of a hall or unit that have gone stale by `nowMs` (tick time); a new sample takes
 * the mark off. Points never heard keep `notReceived`. Returns how many are newly stale.
 */
export function judgeStale(site: CompiledSite, state: SlotState, holderIndex: number, nowMs: number): number {
  const holder = site.holders[holderIndex];
  if (holder === undefined) return 0;
  let newlyStale = 0;
  for (let slot = holder.firstSlot; slot < holder.firstSlot + holder.slotCount; slot += 1) {
    // Nearly always so, of derived points too: then the rest need not be looked at.
    if (!(nowMs - (state.acceptedMs[slot] as number) > shortestMs)) continue;
    const reasons = state.reasons[slot] ?? 0;
    if (site.slots.measured[slot] !== 1 || (reasons & reasonBit.stale) !== 0) continue;
    if (!isStale(site.slots, slot, state.acceptedMs[slot] ?? Number.NaN, nowMs)) continue;
    state.reasons[slot] = reasons | reasonBit.stale;
    newlyStale += 1;
  }
  return newlyStale;
}
