import fc from 'fast-check';
import { releasedAir } from '@ebbline/shared/fluid-properties/dissolved-air';
import { cleanConductance } from '@ebbline/shared/heat/conductance';
import { effectivenessOfNtu, ntuOfEffectiveness } from '@ebbline/shared/heat/counterflow';
import { logMeanDifference } from '@ebbline/shared/heat/lmtd';
import { timeToTemperature } from '@ebbline/shared/heat/time-to-temperature';
import { openHoseFlow } from '@ebbline/shared/hydraulics/open-hose';
import { flowOfPressure, relativeResistance } from '@ebbline/shared/hydraulics/relative-resistance';
import { sealWaterFactor } from '@ebbline/shared/hydraulics/vacuum-reserve';
import { mannKendallZ } from '@ebbline/shared/statistics/mann-kendall';
import { theilSen } from '@ebbline/shared/statistics/theil-sen';
import { celsius, cubicMetrePerSecond, pascalAbsolute } from '@ebbline/shared/units/quantity';
import { describe, expect, it } from 'vitest';
import { deriveHall } from '../../backend/src/evaluation/derive/derive-hall';
import { deriveUnit } from '../../backend/src/evaluation/derive/derive-unit';
import { buildRichUnitM } from '../helpers/rich-unit-m';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

/** Points of unit M with these readings in place of its own. */
function unitM(values: Readonly<Record<string, number>>): (point: string) => number {
  const built = buildRichUnitM();
  for (const [id, value] of Object.entries(values)) built.set(id, value);
  deriveHall(built.site, built.state, 0, 0);
  deriveUnit(built.site, built.state, 0, 0, false);
  return (point) => built.value(point);
}

const runs = { numRuns: 40 };

describe('air and vacuum source of a unit, physically', () => {
  it('leave less in reserve the more gas comes, and never more with one source than with all', () => {
    fc.assert(
      fc.property(between(0, 0.003), between(0.000_01, 0.001), (gas, more) => {
        const before = unitM({ 'vacuum.exhaustFlow': gas });
        const after = unitM({ 'vacuum.exhaustFlow': gas + more });
        for (const point of ['vacuumReserve', 'vacuumReserveAll', 'openingsCarried', 'largestOpeningCarried'])
          expect(after(point)).toBeLessThan(before(point));
        expect(before('vacuumReserve')).toBeLessThan(before('vacuumReserveAll'));
        expect(before('openingsCarried')).toBeLessThan(before('openingsCarriedAll'));
        expect(before('openingsCarried')).toBeGreaterThanOrEqual(0);
      }),
      runs,
    );
  });

  it('carry less with warmer seal water and with a warmer return, as vapour takes the room', () => {
    fc.assert(
      fc.property(between(10, 50), between(1, 10), between(36, 55), (seal, warmer, returned) => {
        const at = (t: number, r: number): number =>
          unitM({ 'vacuum.sealWater.temperature': t, 'return.temperature': r })('vacuumCapacity');
        expect(at(seal + warmer, returned)).toBeLessThan(at(seal, returned));
        expect(at(seal, returned + 1)).toBeLessThan(at(seal, returned));
      }),
      runs,
    );
    expect(sealWaterFactor(pascalAbsolute(32_000), celsius(25), celsius(25))).toBe(1);
    expect(sealWaterFactor(pascalAbsolute(6_000), celsius(45), celsius(25))).toBe(0);
  });

  it('let more air in through a wider hose, through two stubs more than through one, and none where nothing is below ambient', () => {
    const ambient = pascalAbsolute(101_300);
    const flow = (outletBoreM: number, inletBoreM: number, p: number): number =>
      openHoseFlow(
        { outletBoreM, inletBoreM, dischargeCoefficient: 0.7 },
        ambient,
        celsius(20),
        pascalAbsolute(p),
        pascalAbsolute(p),
      );
    fc.assert(
      fc.property(between(0.001, 0.02), between(0.0005, 0.01), between(20_000, 100_000), (outlet, inlet, p) => {
        expect(flow(outlet * 1.1, 0, p)).toBeGreaterThan(flow(outlet, 0, p));
        expect(flow(outlet, inlet, p)).toBeGreaterThan(flow(outlet, 0, p));
      }),
    );
    expect(flow(0.01, 0.01, 101_300)).toBe(0);
  });

  it('release the more dissolved air the deeper water is drawn, and none going up again', () => {
    fc.assert(
      fc.property(between(5, 40), between(15_000, 95_000), between(100, 5_000), (t, p, step) => {
        const from = pascalAbsolute(101_325);
        expect(releasedAir(celsius(t), from, pascalAbsolute(p))).toBeGreaterThan(
          releasedAir(celsius(t), from, pascalAbsolute(p + step)),
        );
        expect(releasedAir(celsius(t), pascalAbsolute(p), pascalAbsolute(p + step))).toBe(0);
      }),
    );
  });
});

describe('flows and resistances, physically', () => {
  it('undo each other: the flow of a pressure through a resistance meets that resistance', () => {
    fc.assert(
      fc.property(between(0.1, 3), between(0.001, 0.02), between(1, 2), (share, rated, n) => {
        const flow = flowOfPressure(share * 40_000, 40_000, cubicMetrePerSecond(rated), n);
        expect(relativeResistance(share * 40_000, 40_000, flow, rated, n)).toBeCloseTo(1, 9);
      }),
    );
    expect(flowOfPressure(-5, 40_000, cubicMetrePerSecond(0.005))).toBe(0);
  });

  it('call for more flow the more drives the loop, and see a larger share and a smaller resistance in more flow', () => {
    fc.assert(
      fc.property(between(150, 400), between(5, 50), between(60_000, 80_000), (flow, more, tank) => {
        const less = unitM({ 'loop.flow': flow / 60_000, 'supplyTank.pressure': tank });
        const greater = unitM({ 'loop.flow': (flow + more) / 60_000, 'supplyTank.pressure': tank });
        expect(greater('flowShare')).toBeGreaterThan(less('flowShare'));
        expect(greater('loopResistance')).toBeLessThan(less('loopResistance'));
        const pushed = unitM({ 'loop.flow': flow / 60_000, 'supplyTank.pressure': tank + 1_000 });
        expect(pushed('expectedFlow')).toBeGreaterThan(less('expectedFlow'));
        expect(less('rideThroughFlow')).toBeGreaterThan(greater('rideThroughFlow'));
      }),
      runs,
    );
  });
});

describe('exchanger and plates, physically', () => {
  it('go from effectiveness to NTU and back, and never beyond 1', () => {
    fc.assert(
      fc.property(between(0.01, 6), between(0, 1), (ntu, ratio) => {
        const epsilon = effectivenessOfNtu(ntu, ratio);
        expect(epsilon).toBeLessThan(1);
        expect(ntuOfEffectiveness(epsilon, ratio) / ntu).toBeCloseTo(1, 6);
      }),
    );
    expect(ntuOfEffectiveness(1.01, 0.5)).toBeNaN();
  });

  it('have a log mean between both ends, below their plain mean, whichever end is first', () => {
    fc.assert(
      fc.property(between(0.1, 50), between(0.1, 50), (d1, d2) => {
        const mean = logMeanDifference(d1, d2);
        expect(mean).toBeGreaterThanOrEqual(Math.min(d1, d2) * (1 - 1e-8));
        expect(mean).toBeLessThanOrEqual(((d1 + d2) / 2) * (1 + 1e-8));
        expect(logMeanDifference(d2, d1)).toBeCloseTo(mean, 6);
      }),
    );
    expect(logMeanDifference(-1, 5)).toBeNaN();
  });

  it('conduct better at more flow on either side, and as commissioned at the commissioned flows', () => {
    fc.assert(
      fc.property(between(0.3, 2), between(0.3, 2), between(0.5, 1), (one, other, n) => {
        expect(cleanConductance(48_000, one * 1.1, other, n)).toBeGreaterThan(cleanConductance(48_000, one, other, n));
        expect(cleanConductance(48_000, one, other * 1.1, n)).toBeGreaterThan(cleanConductance(48_000, one, other, n));
      }),
    );
    expect(cleanConductance(48_000, 1, 1, 0.75)).toBeCloseTo(48_000, 6);
  });

  it('reach a limit sooner with more power and from a warmer start, and later, or never, with fans', () => {
    fc.assert(
      fc.property(between(50, 600), between(30, 80), between(10, 100), between(1, 5), (power, now, more, warmer) => {
        const time = (p: number, t: number, loss = 0): number => timeToTemperature(350, p, t, 85, loss, 27);
        expect(time(power + more, now)).toBeLessThan(time(power, now));
        expect(time(power, now + warmer)).toBeLessThanOrEqual(time(power, now));
        expect(time(power, now, 1 / 0.167)).toBeGreaterThanOrEqual(time(power, now));
      }),
    );
    expect(timeToTemperature(350, 300, 54, 85, 1 / 0.167, 27)).toBe(Infinity);
    expect(timeToTemperature(350, 300, 90, 85)).toBe(0);
  });
});

describe('trends, as statistics', () => {
  const values = fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: 8, maxLength: 24 });

  it('turn with the sign of what they are of, and scale with it', () => {
    fc.assert(
      fc.property(values, between(0.1, 10), between(-50, 50), (y, scale, shift) => {
        const x = y.map((_, i) => i);
        const { slope, lower, upper } = theilSen(x, y, y.length);
        expect(lower).toBeLessThanOrEqual(slope);
        expect(upper).toBeGreaterThanOrEqual(slope);
        const other = y.map((one) => shift - scale * one);
        expect(theilSen(x, other, y.length).slope).toBeCloseTo(-scale * slope, 6);
        expect(mannKendallZ(other, y.length)).toBeCloseTo(-mannKendallZ(y, y.length), 9);
      }),
    );
  });
});
