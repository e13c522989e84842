import { describe, expect, it } from 'vitest';
import { flowLoss } from '@ebbline/shared/hydraulics/flow-loss';
import { returnMainPressure, supplyMainPressure } from '@ebbline/shared/hydraulics/main-pressure';
import { npshAvailable, npshMargin } from '@ebbline/shared/hydraulics/npsh';
import {
  cubicMetrePerSecond,
  kilogramPerCubicMetre,
  metre,
  pascalAbsolute,
  pascalDifference,
} from '@ebbline/shared/units/quantity';

const loss = (flow: number): number =>
  flowLoss(pascalDifference(3_000), cubicMetrePerSecond(flow), cubicMetrePerSecond(0.006));

describe('loss of a segment', () => {
  it('is that of commissioning at rated flow and a quarter of it at half (turbulent)', () => {
    expect(loss(0.006)).toBe(3_000);
    expect(loss(0.003)).toBe(750);
    expect(loss(0)).toBe(0);
  });

  it('turns round with the flow', () => {
    expect(loss(-0.006)).toBe(-3_000);
  });
});

describe('pressure along a main', () => {
  const water = kilogramPerCubicMetre(990);
  it('falls by friction downstream of the supply tank and rises by it upstream of the separator', () => {
    const anchor = pascalAbsolute(50_000);
    const none = pascalDifference(0);
    const some = pascalDifference(3_000);
    expect(supplyMainPressure(anchor, water, metre(1), metre(1), none)).toBe(50_000);
    expect(supplyMainPressure(anchor, water, metre(1), metre(1), some)).toBe(47_000);
    expect(returnMainPressure(anchor, water, metre(1), metre(1), some)).toBe(53_000);
    expect(returnMainPressure(anchor, water, metre(1), metre(0), none)).toBeCloseTo(50_000 + 990 * 9.80665, 6);
  });

  it('tells NPSH against its limit as a pressure', () => {
    const available = npshAvailable(pascalAbsolute(9_594 + 990 * 9.80665 * 2), pascalAbsolute(9_594), water);
    expect(available).toBeCloseTo(2, 10);
    expect(npshMargin(available, metre(2.1), water)).toBeCloseTo(-0.1 * 990 * 9.80665, 6);
  });
});
