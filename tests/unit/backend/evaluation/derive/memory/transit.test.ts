import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Passed, Transit } from '../../../../../../backend/src/evaluation/derive/memory/transit';

const litre = 0.001;
/** Slices of 1 L; seconds at a flow in L/s. */
function run(
  transit: Transit,
  fromS: number,
  seconds: number,
  of: (s: number) => [flow: number, supplyC: number],
): void {
  for (let s = fromS; s < fromS + seconds; s += 1) {
    const [flow, supplyC] = of(s);
    const sample = { flowM3PerS: flow * litre, supplyC, returnC: supplyC + 10, heatW: 1000 };
    transit.push(1, s * 1000, litre, sample, 0, 0);
  }
}
const meanSupply = (transit: Transit, from: number, to: number): number =>
  transit.between(1, Passed.supply, from, to) / (to - from);

describe('the water that has passed', () => {
  it('is looked back on by volume: what came 20 L ago, at whatever flow', () => {
    for (const flow of [0.3, 1, 2.7]) {
      const transit = new Transit(2);
      // The temperature rises by 1 K with each litre.
      run(transit, 0, 300, (s) => [flow, 20 + s * flow]);
      const now = 20 + 299 * flow;
      // What a second brought counts as of one temperature: half a second's litres.
      expect(Math.abs(meanSupply(transit, 15, 25) - (now - 20))).toBeLessThan(0.6 * flow);
    }
  });

  it('stays where it is while nothing flows, and goes on from there', () => {
    const transit = new Transit(2);
    run(transit, 0, 100, (s) => [1, s < 50 ? 20 : 30]);
    const before = meanSupply(transit, 40, 60);
    run(transit, 100, 500, () => [0, 90]);
    expect(meanSupply(transit, 40, 60)).toBe(before);
    run(transit, 600, 10, () => [1, 30]);
    expect(meanSupply(transit, 50, 70)).toBeCloseTo(before, 6);
  });

  it('tells how long it took to pass, and what was made in the chips meanwhile', () => {
    const transit = new Transit(2);
    run(transit, 0, 60, () => [2, 20]);
    run(transit, 60, 60, () => [0.5, 20]);
    expect(transit.between(1, Passed.seconds, 0, 10)).toBeCloseTo(20, 6);
    expect(transit.between(1, Passed.seconds, 40, 60)).toBeCloseTo(10, 6);
    expect(transit.between(1, Passed.joules, 0, 10)).toBeCloseTo(20_000, 3);
  });

  it('is known only as far back as it was seen', () => {
    const transit = new Transit(2);
    expect(transit.isKnown(1, 0.5, false)).toBe(false);
    run(transit, 0, 31, () => [1, 20]);
    expect(transit.isKnown(1, 30, true)).toBe(true);
    expect(transit.isKnown(1, 31, false)).toBe(false);
    expect(transit.isKnown(0, 1, false)).toBe(false);
    transit.forget(1);
    expect(transit.isKnown(1, 1, false)).toBe(false);
  });

  it('bridges a gap of some seconds with what was seen last, and forgets over a longer one', () => {
    const transit = new Transit(2);
    run(transit, 0, 60, () => [1, 20]);
    run(transit, 64, 10, () => [1, 20]);
    expect(transit.isKnown(1, 70, false)).toBe(true);
    run(transit, 74, 8, () => [1, Number.NaN]);
    expect(transit.isKnown(1, 70, false)).toBe(true);
    run(transit, 82, 8, () => [1, Number.NaN]);
    expect(transit.isKnown(1, 1, false)).toBe(false);
    run(transit, 90, 30, () => [1, 20]);
    expect(transit.isKnown(1, 29, false)).toBe(true);
    run(transit, 200, 1, () => [1, 20]);
    expect(transit.isKnown(1, 1, false)).toBe(false);
  });

  it('forgets where the site comes to state another volume', () => {
    const transit = new Transit(1);
    for (let s = 0; s < 60; s += 1)
      transit.push(
        0,
        s * 1000,
        s < 40 ? litre : 2 * litre,
        { flowM3PerS: litre, supplyC: 20, returnC: 30, heatW: 0 },
        0,
        0,
      );
    expect(transit.isKnown(0, 9, false)).toBe(true);
    expect(transit.isKnown(0, 10, false)).toBe(false);
  });

  it('sees a step of power behind two lags: 1 − (1 + t/τ) e^(−t/τ) of it where both are alike', () => {
    const transit = new Transit(1);
    const at = (s: number, heatW: number): void => {
      transit.push(0, s * 1000, litre, { flowM3PerS: litre, supplyC: 20, returnC: 30, heatW }, 10, 10);
    };
    for (let s = 0; s < 50; s += 1) at(s, 0);
    for (let s = 50; s < 70; s += 1) at(s, 1000);
    // Two first-order lags in a row, at two time constants (control text, closed form); steps of 1 s are 5 % early.
    expect(transit.between(0, Passed.joules, 0, 1) / 1000).toBeCloseTo(1 - 3 * Math.exp(-2), 1);
  });

  it('never gives a mean outside what passed (property)', () => {
    const second = fc.record({
      flow: fc.double({ min: 0, max: 40, noNaN: true }),
      t: fc.integer({ min: 10, max: 60 }),
    });
    fc.assert(
      fc.property(fc.array(second, { minLength: 50, maxLength: 200 }), (seconds) => {
        const transit = new Transit(2);
        run(transit, 0, seconds.length, (s) => [seconds[s]?.flow ?? 0, seconds[s]?.t ?? 0]);
        if (!transit.isKnown(1, 60, false)) return;
        const mean = meanSupply(transit, 20, 60);
        expect(mean).toBeGreaterThan(10 - 1e-6);
        expect(mean).toBeLessThan(60 + 1e-6);
      }),
    );
  });
});
