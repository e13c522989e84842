import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decimalsFor, formatNumber, steadyDecimals } from '../../../../frontend/src/text/format-number';

describe('decimals under an uncertainty', () => {
  it.each([
    [0.6, 1],
    [0.05, 2],
    [5, 0],
    [0.12, 2],
    [2.4, 0],
    [0.0019, 3],
    [40, 0],
    [124, -1],
  ])('are, for ± %d, %d', (uncertainty, decimals) => {
    expect(decimalsFor(uncertainty)).toBe(decimals);
  });

  it('stay while a fluctuating uncertainty still shows one or two digits, and only then', () => {
    expect(steadyDecimals(1.6, undefined)).toBe(0);
    expect(steadyDecimals(1.6, 1)).toBe(1);
    expect(steadyDecimals(2.4, 1)).toBe(0);
    expect(steadyDecimals(1.3, 0)).toBe(0);
    expect(steadyDecimals(0.06, 0)).toBe(2);
  });

  it('show at least one and at most two digits of it that are not noughts', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 0.99, noNaN: true }), (uncertainty) => {
        const digits = uncertainty
          .toFixed(decimalsFor(uncertainty) ?? 0)
          .replace('.', '')
          .replace(/^0+/, '');
        expect(digits.length).toBeGreaterThanOrEqual(1);
        expect(digits.length).toBeLessThanOrEqual(2);
      }),
    );
  });

  it('are not set by an uncertainty that says nothing', () => {
    expect(decimalsFor(0)).toBeUndefined();
    expect(decimalsFor(NaN)).toBeUndefined();
  });
});

describe('a number', () => {
  it('groups thousands from five digits on', () => {
    expect(formatNumber(1234, 0)).toBe('1234');
    expect(formatNumber(1_234_567.8, 1)).toBe('1\u202f234\u202f567.8');
  });

  it('is rounded to tens or hundreds where its digits mean no more', () => {
    expect(formatNumber(1118, -1)).toBe('1120');
    expect(formatNumber(-12_345, -2)).toBe('−12\u202f300');
    expect(formatNumber(-4, -1)).toBe('0');
  });
});
