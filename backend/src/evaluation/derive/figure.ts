import type { Figure } from '@ebbline/shared/contract/live-feed';
import { qualityOf, reasonList } from '../slots/quality-reasons';
import { slotAgeS } from '../slots/slot-age';
import type { SlotState } from '../slots/slot-state';

const nothing: Figure = {
  value: null,
  age: null,
  quality: 'bad',
  reasons: ['notApplicable'],
  expandedUncertainty: null,
};

/** A slot as a number for a picture; ages in seconds at `nowMs`. Slot −1 = the site has no such point. */
export function figureOf(state: SlotState, slot: number, nowMs: number): Figure {
  if (slot < 0) return nothing;
  const reasons = state.reasons[slot] ?? 0;
  return {
    value: finiteOrNull(state.value[slot]),
    age: finiteOrNull(slotAgeS(state, slot, nowMs)),
    quality: qualityOf(reasons),
    reasons: reasonList(reasons),
    expandedUncertainty: finiteOrNull(state.expandedUncertainty[slot]),
  };
}

export const finiteOrNull = (value: number | undefined): number | null =>
  value !== undefined && Number.isFinite(value) ? value : null;
