import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { dewPoint } from '@ebbline/shared/fluid-properties/moist-air';
import { geopotentialAltitude, standardPressure } from '@ebbline/shared/fluid-properties/standard-atmosphere';
import { airThroughOpening } from '@ebbline/shared/hydraulics/air-through-opening';
import { freeAirOfMass, freeAirOfThroughput } from '@ebbline/shared/hydraulics/free-air';
import { equilibriumPressure, suctionThroughput } from '@ebbline/shared/hydraulics/vacuum-suction';
import { airGasConstant } from '@ebbline/shared/fluid-properties/air';
import { celsius, cubicMetrePerSecond, kilogramPerSecond, metre, pascalAbsolute } from '@ebbline/shared/units/quantity';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
const area = (bore: number): number => (Math.PI / 4) * bore ** 2;
const freeLitresPerMinute = (bore: number, dischargeCoefficient: number): number =>
  freeAirOfMass(
    airThroughOpening(dischargeCoefficient, area(bore), pascalAbsolute(101_325), celsius(20), pascalAbsolute(40_000)),
  ) * 60_000;

describe('air, physically', () => {
  it('condenses no warmer than it is, and sooner the damper it is', () => {
    fc.assert(
      fc.property(between(-40, 59), between(0.01, 0.98), (t, humidity) => {
        const dew = dewPoint(celsius(t), humidity);
        expect(dew).toBeLessThanOrEqual(t);
        expect(dewPoint(celsius(t), humidity + 0.01)).toBeGreaterThan(dew);
        expect(dewPoint(celsius(t + 0.5), humidity)).toBeGreaterThan(dew);
      }),
    );
  });

  it('gets thinner with height', () => {
    fc.assert(
      fc.property(between(-400, 9000), between(1, 500), (h, step) => {
        expect(standardPressure(metre(h + step))).toBeLessThan(standardPressure(metre(h)));
        expect(Math.abs(geopotentialAltitude(metre(h)) - h)).toBeLessThan(15);
      }),
    );
  });

  it('comes in faster the lower the loop stands, until it is choked and comes no faster', () => {
    const into = (p: number): number =>
      airThroughOpening(0.7, area(0.002), pascalAbsolute(101_325), celsius(20), pascalAbsolute(p));
    fc.assert(
      fc.property(between(54_000, 101_000), between(1, 300), (p, step) => {
        expect(into(p)).toBeGreaterThan(into(p + step));
      }),
    );
    fc.assert(fc.property(between(1_000, 53_000), (p) => into(p) === into(20_000)));
  });

  it('has no step where choking begins, nor where the loop meets ambient', () => {
    const into = (p: number): number =>
      airThroughOpening(1, area(0.001), pascalAbsolute(101_325), celsius(20), pascalAbsolute(p));
    const choking = 0.528281787 * 101_325;
    expect(Math.abs(into(choking - 1) / into(choking + 1) - 1)).toBeLessThan(1e-6);
    expect(into(101_325)).toBe(0);
    expect(into(101_324.999)).toBeLessThan(into(101_000) / 100);
    expect(into(150_000)).toBe(0);
  });

  it('is 26 free L/min through a calibrated orifice of 2 mm with C_d 0.7 (parameter set, computed; printed to two digits)', () => {
    expect(Math.round(freeLitresPerMinute(0.002, 0.7))).toBe(26);
  });

  it('is the same free air whether counted by mass or by throughput', () => {
    fc.assert(
      fc.property(between(1e-6, 1e-2), between(0, 60), (mass, t) => {
        const throughput = mass * airGasConstant * (t + 273.15);
        expect(freeAirOfThroughput(throughput, celsius(t)) / freeAirOfMass(kilogramPerSecond(mass)) - 1).toBeCloseTo(
          0,
          10,
        );
      }),
    );
  });

  it('settles at the pressure at which the source carries just what comes in', () => {
    fc.assert(
      fc.property(between(0.01, 100), between(1e-4, 0.1), between(1_000, 20_000), (throughput, suction, vapour) => {
        const p = equilibriumPressure(throughput, cubicMetrePerSecond(suction), pascalAbsolute(vapour));
        expect(suctionThroughput(cubicMetrePerSecond(suction), p, pascalAbsolute(vapour)) / throughput - 1).toBeCloseTo(
          0,
          6,
        );
      }),
    );
  });
});
