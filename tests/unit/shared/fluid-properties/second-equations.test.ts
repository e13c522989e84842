import { describe, expect, it } from 'vitest';
import { nitrogenSolubility, oxygenSolubility } from '@ebbline/shared/fluid-properties/dissolved-air';
import { oxygenSaturation } from '@ebbline/shared/fluid-properties/dissolved-oxygen';
import { goffVapourPressure } from '@ebbline/shared/fluid-properties/goff-vapour-pressure';
import { henryConstant } from '@ebbline/shared/fluid-properties/henry-constant';
import { pressedWaterDensity, waterOfRegion1 } from '@ebbline/shared/fluid-properties/if97-region-1';
import {
  liquidWaterDensity,
  liquidWaterHeatCapacity,
  liquidWaterThermalConductivity,
  liquidWaterViscosity,
} from '@ebbline/shared/fluid-properties/liquid-water';
import { localGravity } from '@ebbline/shared/fluid-properties/local-gravity';
import { saturatedAirVapourPressure } from '@ebbline/shared/fluid-properties/moist-air';
import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { surfaceTension, surfaceTensionChecked } from '@ebbline/shared/fluid-properties/surface-tension';
import { waterThermalConductivity, waterViscosity } from '@ebbline/shared/fluid-properties/water-transport';
import { celsius, kilogramPerCubicMetre, metre, pascalAbsolute } from '@ebbline/shared/units/quantity';

const every5 = Array.from({ length: 13 }, (_, i) => celsius(5 * i));
const relative = (a: number, b: number): number => Math.abs(a / b - 1);

describe('the equations of water used each second', () => {
  it.each(every5)('agree with IF97 region 1 at %s °C: 0.03 kg/m³ and 0.1 % of heat capacity', (t) => {
    const water = waterOfRegion1(t, pascalAbsolute(100_000));
    expect(Math.abs(1 / water.volume - liquidWaterDensity(t))).toBeLessThan(0.03);
    expect(relative(water.heatCapacity, liquidWaterHeatCapacity(t))).toBeLessThan(1e-3);
  });

  it.each(every5)('leave pressure out for 0.2 kg/m³ at most from 20 to 400 kPa at %s °C', (t) => {
    const change = pressedWaterDensity(t, pascalAbsolute(400_000)) - pressedWaterDensity(t, pascalAbsolute(20_000));
    expect(change).toBeGreaterThan(0.1);
    expect(change).toBeLessThan(0.2);
  });

  it.each(every5)('agree with IAPWS R12-08 and R15-11 at %s °C within a third of a per cent', (t) => {
    const density = liquidWaterDensity(t);
    expect(relative(waterViscosity(t, density), liquidWaterViscosity(t))).toBeLessThan(3e-3);
    expect(relative(waterThermalConductivity(t, density), liquidWaterThermalConductivity(t))).toBeLessThan(3e-3);
  });
});

describe('gases in water', () => {
  it.each([10, 20, 30, 40])(
    'have Henry constants that say what Weiss (1970) measured at %s °C, within 3 %',
    (temperature) => {
      const t = celsius(temperature);
      // mL(STP)/L = mole fraction × mol of water a litre × 22 414 mL; air: 20.95 % oxygen, 78.08 % nitrogen.
      const perLitre = (share: number, gas: 'O2' | 'N2'): number =>
        ((share * (101_325 - saturationPressure(t))) / henryConstant(gas, t)) *
        (liquidWaterDensity(t) / 18.015) *
        22_414;
      expect(relative(perLitre(0.2095, 'O2'), oxygenSolubility(t))).toBeLessThan(0.03);
      expect(relative(perLitre(0.7808, 'N2'), nitrogenSolubility(t))).toBeLessThan(0.03);
    },
  );

  it.each([0, 10, 20, 30, 40])('have an oxygen of Benson and Krause within 0.5 % of Weiss at %s °C', (temperature) => {
    // 31.998 g/mol over 22.392 L/mol of oxygen.
    const ofWeiss = (oxygenSolubility(celsius(temperature)) * 31.998) / 22.392;
    expect(relative(oxygenSaturation(celsius(temperature)), ofWeiss)).toBeLessThan(5e-3);
  });
});

describe('vapour over water', () => {
  it.each(every5)('by WMO-No. 8 is within 0.4 % of Goff (1957) at %s °C', (t) => {
    expect(relative(saturatedAirVapourPressure(t), goffVapourPressure(t))).toBeLessThan(4e-3);
  });
});

describe('equations outside their range', () => {
  const hot = celsius(1000);
  it.each([
    ['IF97 region 1', waterOfRegion1(hot, pascalAbsolute(1e5)).volume],
    ['IF97 region 1 without pressure', waterOfRegion1(celsius(20), pascalAbsolute(0)).heatCapacity],
    ['viscosity', waterViscosity(hot, kilogramPerCubicMetre(998))],
    ['thermal conductivity', waterThermalConductivity(celsius(-1), kilogramPerCubicMetre(998))],
    ['surface tension', surfaceTension(hot)],
    ['Henry constant', henryConstant('N2', celsius(4))],
    ['oxygen saturation', oxygenSaturation(celsius(41))],
    ['Goff vapour pressure', goffVapourPressure(celsius(101))],
  ])('give no number: %s', (_, value) => {
    expect(value).toBeNaN();
  });

  it('refuse with a code where a person asks', () => {
    expect(surfaceTensionChecked(hot)).toMatchObject({ ok: false, fault: { code: 'FLUID_OUT_OF_RANGE' } });
  });
});

describe('gravity', () => {
  it('is least at the equator, most at the poles and falls with height (GRS 80)', () => {
    expect(localGravity(0, metre(0))).toBeCloseTo(9.7803267715, 9);
    expect(localGravity(90, metre(0))).toBeCloseTo(9.8321863685, 8);
    expect(localGravity(45, metre(1500))).toBeLessThan(localGravity(45, metre(0)));
  });
});
