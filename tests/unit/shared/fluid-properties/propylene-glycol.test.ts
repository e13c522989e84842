import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { glycolByMass, glycolByVolume } from '@ebbline/shared/fluid-properties/glycol-fluid';
import { glycolMassOfVolume, glycolVolumeOfMass } from '@ebbline/shared/fluid-properties/glycol-fraction';
import { waterFluid } from '@ebbline/shared/fluid-properties/water-fluid';
import { celsius, massFraction, volumeFraction } from '@ebbline/shared/units/quantity';

const properties = ['density', 'heatCapacity', 'viscosity', 'thermalConductivity'] as const;

describe('water with propylene glycol', () => {
  it.each(properties)('has no %s outside the temperatures and fractions of its source', (property) => {
    expect(glycolByVolume(volumeFraction(0.25))[property](celsius(100.1))).toBeNaN();
    expect(glycolByVolume(volumeFraction(0.25))[property](celsius(-35.1))).toBeNaN();
    expect(glycolByVolume(volumeFraction(0.09))[property](celsius(40))).toBeNaN();
    expect(glycolByVolume(volumeFraction(0.61))[property](celsius(40))).toBeNaN();
    expect(glycolByMass(massFraction(0.25))[property](celsius(40.1))).toBeNaN();
    expect(glycolByMass(massFraction(0.14))[property](celsius(30))).toBeNaN();
    expect(glycolByMass(massFraction(0.25))[property](celsius(Number.NaN))).toBeNaN();
  });

  it('differs between both sources by 0.4 % in density, about 1 % in heat capacity and 4 % in viscosity at most at PG25', () => {
    fc.assert(
      fc.property(fc.double({ min: 20, max: 40, noNaN: true }), (t) => {
        const at = celsius(t);
        const byVolume = glycolByVolume(glycolVolumeOfMass(massFraction(0.25)));
        const byMass = glycolByMass(massFraction(0.25));
        expect(Math.abs(byVolume.density(at) / byMass.density(at) - 1)).toBeLessThan(0.005);
        expect(Math.abs(byVolume.heatCapacity(at) / byMass.heatCapacity(at) - 1)).toBeLessThan(0.014);
        expect(Math.abs(byVolume.viscosity(at) / byMass.viscosity(at) - 1)).toBeLessThan(0.05);
      }),
    );
  });

  it('is heavier and more viscous than water and stores and conducts less, all the more the more glycol it holds', () => {
    for (let t = 0; t <= 90; t += 5) {
      const at = celsius(t);
      const thin = glycolByVolume(volumeFraction(0.15));
      const thick = glycolByVolume(volumeFraction(0.4));
      expect(thin.density(at)).toBeGreaterThan(waterFluid.density(at));
      expect(thick.density(at)).toBeGreaterThan(thin.density(at));
      expect(thin.viscosity(at)).toBeGreaterThan(waterFluid.viscosity(at));
      expect(thick.viscosity(at)).toBeGreaterThan(thin.viscosity(at));
      expect(thick.heatCapacity(at)).toBeLessThan(thin.heatCapacity(at));
      expect(thin.heatCapacity(at)).toBeLessThan(waterFluid.heatCapacity(at));
      expect(thick.thermalConductivity(at)).toBeLessThan(thin.thermalConductivity(at));
    }
  });

  it('boils no earlier than water does: the bound is that of water', () => {
    const at = celsius(45);
    expect(glycolByVolume(volumeFraction(0.25)).vapourPressure(at)).toBe(waterFluid.vapourPressure(at));
  });

  it('carries a wider uncertainty of heat capacity than water', () => {
    expect(glycolByVolume(volumeFraction(0.25)).heatCapacityRelativeU).toBe(0.01);
    expect(waterFluid.heatCapacityRelativeU).toBe(0.001);
  });

  it('says by what its glycol is counted', () => {
    expect(glycolByVolume(volumeFraction(0.25)).name).toBe('25 % propylene glycol by volume');
    expect(glycolByMass(massFraction(0.244)).name).toBe('24.4 % propylene glycol by mass');
  });
});

describe('mass and volume fraction of propylene glycol', () => {
  it('come back to each other, and are the same at 0 and 60 % only', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.6, noNaN: true }), (x) => {
        expect(Math.abs(glycolMassOfVolume(glycolVolumeOfMass(massFraction(x))) - x)).toBeLessThan(1e-12);
        expect(glycolVolumeOfMass(massFraction(x))).toBeLessThanOrEqual(x + 1e-12);
      }),
    );
  });

  it('are no number outside 0 … 60 %', () => {
    expect(glycolVolumeOfMass(massFraction(0.61))).toBeNaN();
    expect(glycolVolumeOfMass(massFraction(-0.01))).toBeNaN();
    expect(glycolMassOfVolume(volumeFraction(Number.NaN))).toBeNaN();
  });
});
