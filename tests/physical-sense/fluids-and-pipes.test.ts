import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { glycolByMass, glycolByVolume } from '@ebbline/shared/fluid-properties/glycol-fluid';
import { glycolMassOfVolume, glycolVolumeOfMass } from '@ebbline/shared/fluid-properties/glycol-fraction';
import { henryConstant } from '@ebbline/shared/fluid-properties/henry-constant';
import { molybdateOfMolybdenum, molybdenumOfMolybdate } from '@ebbline/shared/fluid-properties/molybdate';
import { electrodeSlope } from '@ebbline/shared/fluid-properties/ph-electrode';
import { surfaceTension } from '@ebbline/shared/fluid-properties/surface-tension';
import { waterFluid } from '@ebbline/shared/fluid-properties/water-fluid';
import { frictionFactor, frictionLoss } from '@ebbline/shared/hydraulics/pipe-friction';
import { celsius } from '@ebbline/shared/units/quantity';

const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('fluids and pipes, physically', () => {
  it('have glycol that is denser, thicker and takes less heat than water, the more so the more of it', () => {
    fc.assert(
      fc.property(between(5, 80), between(0.1, 0.5), (t, share) => {
        const at = celsius(t);
        const thin = glycolByVolume(share as Parameters<typeof glycolByVolume>[0]);
        const thick = glycolByVolume((share + 0.1) as Parameters<typeof glycolByVolume>[0]);
        expect(thin.viscosity(at)).toBeGreaterThan(waterFluid.viscosity(at));
        expect(thick.viscosity(at)).toBeGreaterThan(thin.viscosity(at));
        expect(thick.heatCapacity(at)).toBeLessThan(thin.heatCapacity(at));
      }),
    );
  });

  it('go from mass to volume fraction and back', () => {
    fc.assert(
      fc.property(between(0, 0.6), (share) => {
        const mass = share as Parameters<typeof glycolVolumeOfMass>[0];
        expect(glycolMassOfVolume(glycolVolumeOfMass(mass))).toBeCloseTo(share, 3);
      }),
    );
  });

  it('have two published glycols that agree where both hold: density to 1 %, heat capacity to 4 %', () => {
    fc.assert(
      fc.property(between(10, 40), between(0.15, 0.4), (t, share) => {
        const mass = share as Parameters<typeof glycolByMass>[0];
        const melinder = glycolByMass(mass);
        const ashrae = glycolByVolume(glycolVolumeOfMass(mass));
        expect(Math.abs(melinder.density(celsius(t)) / ashrae.density(celsius(t)) - 1)).toBeLessThan(0.01);
        expect(Math.abs(melinder.heatCapacity(celsius(t)) / ashrae.heatCapacity(celsius(t)) - 1)).toBeLessThan(0.04);
      }),
    );
  });

  it('have a skin that slackens and gases that dissolve less as water warms to 60 °C', () => {
    fc.assert(
      fc.property(between(6, 55), between(0.5, 5), (t, warmer) => {
        expect(surfaceTension(celsius(t + warmer))).toBeLessThan(surfaceTension(celsius(t)));
        for (const gas of ['N2', 'O2', 'CO2'] as const)
          expect(henryConstant(gas, celsius(t + warmer))).toBeGreaterThan(henryConstant(gas, celsius(t)));
      }),
    );
  });

  it('count the same molybdenum as metal and as molybdate, and a steeper electrode as it warms', () => {
    fc.assert(
      fc.property(between(0, 500), between(0, 60), (ppm, t) => {
        expect(molybdenumOfMolybdate(molybdateOfMolybdenum(ppm))).toBeCloseTo(ppm, 9);
        expect(electrodeSlope(celsius(t + 1))).toBeGreaterThan(electrodeSlope(celsius(t)));
      }),
    );
  });

  it('lose more in a rougher pipe, and less than in proportion to the flow’s square in a smooth one', () => {
    fc.assert(
      fc.property(between(5_000, 1e7), between(0, 0.03), between(1e-4, 0.01), (re, rough, more) => {
        expect(frictionFactor(re, rough + more)).toBeGreaterThan(frictionFactor(re, rough));
        expect(frictionFactor(2 * re, 0)).toBeLessThan(frictionFactor(re, 0));
        expect(frictionLoss(0.02, 20, 0.05, 990, 2)).toBe(2 * frictionLoss(0.02, 10, 0.05, 990, 2));
      }),
    );
  });
});
