import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { SecondWindows, windowSeconds } from '../../../../../../backend/src/evaluation/derive/memory/second-windows';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('windows of seconds', () => {
  it('give back the slope of a straight line, whatever the half', () => {
    fc.assert(
      fc.property(between(-5, 5), between(-100, 100), fc.constantFrom(2, 4, 5, 30), (slope, start, half) => {
        const windows = new SecondWindows(2);
        for (let s = 0; s < 200; s += 1) windows.push(1, start + slope * s);
        expect(windows.slope(1, half)).toBeCloseTo(slope, 2);
        expect(windows.at(1, 3)).toBeCloseTo(start + slope * 196, 1);
      }),
    );
  });

  it('count changes in `triangular` as `slope` does: what flows in and is stored adds up', () => {
    fc.assert(
      fc.property(fc.array(between(0, 50), { minLength: 70, maxLength: 70 }), (flows) => {
        const windows = new SecondWindows(2);
        let content = 1000;
        for (const flow of flows) {
          windows.push(0, content);
          content -= flow;
          windows.push(0, content);
          windows.push(1, flow);
          windows.push(1, flow);
        }
        const even = new SecondWindows(2);
        content = 1000;
        for (const flow of flows) {
          content -= flow;
          even.push(0, content);
          even.push(1, flow);
        }
        expect(even.slope(0, 4) + even.triangular(1, 4)).toBeCloseTo(0, 3);
      }),
    );
  });

  it('know the noise of a signal that also drifts: 1 in 1 for ± 1 alternately', () => {
    const windows = new SecondWindows(1);
    for (let s = 0; s < 600; s += 1) windows.push(0, 0.5 * s + (s % 4 < 2 ? 1 : -1));
    // Differences of second order of the pattern + + − −: ± 2, so that σ² = 4/6.
    expect(windows.noise(0)).toBeCloseTo(Math.sqrt(4 / 6), 1);
  });

  it('know nothing before they are full enough, over an unknown value, or after a gap', () => {
    const windows = new SecondWindows(2);
    for (let s = 0; s < 9; s += 1) windows.push(0, s);
    expect(windows.slope(0, 5)).toBeNaN();
    windows.push(0, 9);
    expect(windows.slope(0, 5)).toBeCloseTo(1);
    windows.push(0, Number.NaN);
    expect(windows.slope(0, 5)).toBeNaN();
    for (let s = 0; s < windowSeconds; s += 1) windows.push(0, s);
    expect(windows.slope(0, 30)).toBeCloseTo(1, 5);
    windows.forget(0, 1);
    expect(windows.slope(0, 2)).toBeNaN();
  });
});
