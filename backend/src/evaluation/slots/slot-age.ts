import type { SlotState } from './slot-state';

/**
 * Seconds since the source time of a slot's value, at least those since its newest sample was accepted; never below zero, NaN where it
 * is not known. The clock of the sender may be ahead of the time in force, by an hour after a step: by its source time alone a value
 * would stay as fresh as new for as long, whether samples come or not.
 */
export function slotAgeS({ sourceMs, acceptedMs }: SlotState, slot: number, nowMs: number): number {
  const source = sourceMs[slot] ?? Number.NaN;
  const accepted = acceptedMs[slot] ?? Number.NaN;
  return Math.max(0, nowMs - (accepted < source ? accepted : source)) / 1000;
}
