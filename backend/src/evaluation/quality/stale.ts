import type { SlotTable } from '../site/compiled-site';

const periods = 3;
/** Nothing is stale sooner, whatever its period. */
export const shortestMs = 5000;

/** No new sample for three periods, at least 5 s, makes a value stale. */
export const staleAfterMs = (slots: SlotTable, slot: number): number =>
  Math.max(periods * (slots.periodMs[slot] ?? 0), shortestMs);

export const isStale = (slots: SlotTable, slot: number, acceptedMs: number, nowMs: number): boolean =>
  nowMs - acceptedMs > staleAfterMs(slots, slot);
