import type { SlotState } from '../slots/slot-state';
import { usable } from './judge-context';
import { saysNothing } from './says-nothing';
import { Verdict } from './verdict';

/**
 * For what is judged by a mean: while its input is bad now, the mean of before goes on alone, and may walk out of its limit as old
 * hours leave it. That ends nothing. A unit that has no such point, and an input that has nothing to say now, are no bad input.
 */
export const holdWhileBad = (state: SlotState, slot: number, verdict: Verdict): Verdict =>
  verdict === Verdict.no && slot >= 0 && Number.isNaN(usable(state, slot)) && !saysNothing(state, slot)
    ? Verdict.hold
    : verdict;
