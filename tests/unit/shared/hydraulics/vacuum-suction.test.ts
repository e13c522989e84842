import { describe, expect, it } from 'vitest';
import { gasLoadBySpeed, suctionAt } from '@ebbline/shared/hydraulics/vacuum-suction';
import { celsius, cubicMetrePerSecond, pascalAbsolute } from '@ebbline/shared/units/quantity';

const pressures = [4_000, 10_000, 30_000, 101_325];
const suctions = [0, 0.015, 0.022, 0.022];
const at = (pa: number): number => suctionAt(pressures, suctions, pascalAbsolute(pa));

describe('suction of a vacuum source', () => {
  it('meets its curve in the rows and runs straight between them', () => {
    expect(at(4_000)).toBe(0);
    expect(at(10_000)).toBe(0.015);
    expect(at(20_000)).toBeCloseTo(0.0185, 12);
    expect(at(101_325)).toBe(0.022);
  });

  it.each([3_999, 101_326, Number.NaN])('gives nothing at %d Pa, outside the curve', (pa) => {
    expect(at(pa)).toBeNaN();
  });

  it('gives nothing for a curve without rows, and follows a step where two rows share a pressure', () => {
    expect(suctionAt([], [], pascalAbsolute(10_000))).toBeNaN();
    expect(suctionAt([10_000, 10_000, 20_000], [0.01, 0.02, 0.02], pascalAbsolute(15_000))).toBe(0.02);
  });

  it('carries no air at the vapour pressure of the water, and never less than none', () => {
    const load = (pa: number): number =>
      gasLoadBySpeed(1, cubicMetrePerSecond(0.02), pascalAbsolute(pa), pascalAbsolute(9_594), celsius(45));
    expect(load(9_594)).toBe(0);
    expect(load(9_000)).toBe(0);
    expect(load(9_600)).toBeGreaterThan(0);
  });
});
