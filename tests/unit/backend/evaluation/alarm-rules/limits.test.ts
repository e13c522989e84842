import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { judgeAbove } from '../../../../../backend/src/evaluation/alarm-rules/above';
import { anyOf } from '../../../../../backend/src/evaluation/alarm-rules/any-of';
import { judgeBelow } from '../../../../../backend/src/evaluation/alarm-rules/below';
import { judgeDiscrete } from '../../../../../backend/src/evaluation/alarm-rules/discrete';
import { judgeNoData } from '../../../../../backend/src/evaluation/alarm-rules/no-data';
import { Verdict } from '../../../../../backend/src/evaluation/alarm-rules/verdict';
import { reasonBit } from '../../../../../backend/src/evaluation/slots/quality-reasons';

const { yes, no, hold } = Verdict;
const bad = Number.NaN;

describe('a limit from above to below', () => {
  it.each([
    ['at the limit', 5, false, no],
    ['just below it', 4.999, false, yes],
    ['in the deadband, not in alarm', 5.5, false, no],
    ['in the deadband, in alarm', 5.5, true, yes],
    ['at the end of the deadband', 6, true, no],
    ['bad, not in alarm', bad, false, hold],
    ['bad, in alarm', bad, true, hold],
  ])('judges a value %s', (_what, value, active, verdict) => {
    expect(judgeBelow(value, 5, 1, active)).toBe(verdict);
  });
});

describe('a limit from below to above', () => {
  it.each([
    ['at the limit', 5, false, no],
    ['just above it', 5.001, false, yes],
    ['in the deadband, not in alarm', 4.5, false, no],
    ['in the deadband, in alarm', 4.5, true, yes],
    ['at the end of the deadband', 4, true, no],
    ['bad, in alarm', bad, true, hold],
  ])('judges a value %s', (_what, value, active, verdict) => {
    expect(judgeAbove(value, 5, 1, active)).toBe(verdict);
  });

  it('is the mirror of the limit below', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true }),
        fc.integer(),
        fc.nat(),
        fc.boolean(),
        (value, limit, deadband, active) => {
          expect(judgeAbove(value, limit, deadband, active)).toBe(judgeBelow(-value, -limit, deadband, active));
        },
      ),
    );
  });
});

describe('a yes/no point', () => {
  it.each([
    [1, yes],
    [0, no],
    [bad, hold],
  ])('is judged %d → %d', (value, verdict) => expect(judgeDiscrete(value)).toBe(verdict));
});

describe('one of two', () => {
  it.each([
    [yes, hold, yes],
    [no, yes, yes],
    [no, hold, hold],
    [no, no, no],
  ])('makes %d and %d to %d', (first, second, both) => {
    expect(anyOf(first, second)).toBe(both);
    expect(anyOf(second, first)).toBe(both);
  });
});

describe('no data', () => {
  it.each([
    ['good', 0, false, no],
    ['uncertain', reasonBit.stuck, false, no],
    ['stale', reasonBit.stale, true, yes],
    ['out of range', reasonBit.outOfRange, true, yes],
    ['never heard, within the start grace', reasonBit.notReceived, true, hold],
    ['never heard, after it', reasonBit.notReceived, false, yes],
    ['retained and of unknown age, within the start grace', reasonBit.ageUnknown, true, hold],
  ])('judges a point that is %s', (_what, reasons, inGrace, verdict) => {
    expect(judgeNoData(reasons, inGrace)).toBe(verdict);
  });
});
