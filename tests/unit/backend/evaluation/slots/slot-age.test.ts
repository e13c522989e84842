import { describe, expect, it } from 'vitest';
import { slotAgeS } from '../../../../../backend/src/evaluation/slots/slot-age';
import { createSlotState } from '../../../../../backend/src/evaluation/slots/slot-state';

const nowMs = Date.UTC(2031, 4, 6, 7, 8, 9);
const age = (sourceAgoS: number, acceptedAgoS: number): number => {
  const state = createSlotState(1);
  state.sourceMs[0] = nowMs - sourceAgoS * 1000;
  state.acceptedMs[0] = nowMs - acceptedAgoS * 1000;
  return slotAgeS(state, 0, nowMs);
};

describe('the age of a value', () => {
  it('is that of its source time, however lately it came', () => {
    expect(age(3, 2)).toBe(3);
    expect(age(3600, 0)).toBe(3600);
  });

  it('is at least the time since it was accepted, where the clock of its sender is ahead', () => {
    expect(age(-3600, 20)).toBe(20);
    expect(age(1, 20)).toBe(20);
  });

  it('is never below zero', () => {
    expect(age(-3600, -1)).toBe(0);
  });

  it('is not known without a source time, and is that of the source time where no live sample came', () => {
    expect(age(Number.NaN, 5)).toBeNaN();
    expect(age(Number.NaN, Number.NaN)).toBeNaN();
    expect(age(7, Number.NaN)).toBe(7);
  });
});
