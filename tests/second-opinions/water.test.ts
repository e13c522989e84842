import { beforeAll, expect, it } from 'vitest';
import { henryConstant } from '@ebbline/shared/fluid-properties/henry-constant';
import { waterOfRegion1 } from '@ebbline/shared/fluid-properties/if97-region-1';
import {
  liquidWaterDensity,
  liquidWaterHeatCapacity,
  liquidWaterThermalConductivity,
  liquidWaterViscosity,
} from '@ebbline/shared/fluid-properties/liquid-water';
import { saturationPressure } from '@ebbline/shared/fluid-properties/saturation-pressure';
import { saturationTemperature } from '@ebbline/shared/fluid-properties/saturation-temperature';
import { surfaceTension } from '@ebbline/shared/fluid-properties/surface-tension';
import { waterThermalConductivity, waterViscosity } from '@ebbline/shared/fluid-properties/water-transport';
import { celsius, kilogramPerCubicMetre, pascalAbsolute, type Celsius } from '@ebbline/shared/units/quantity';
import { pathOf, suiteNeeding } from '../helpers/requirements';
import { askPython, range, worstDifference, worstShare } from './ask-python';

/** Of SR6-08, whole; of a liquid at 0.1 MPa below its boiling point; of region 4 below the critical point. */
const supercooledC = range(-19.9, 109.9, 200);
const liquidC = range(0.01, 99, 120);
const saturationC = range(0.01, 370, 200);
const saturationPa = range(612, 2e7, 200);
/** Nitrogen was measured from 5 °C on. */
const fewC = range(6, 95, 12);
const pressuresPa = [15_000, 101_325, 400_000, 5e6];

const script = `
from iapws.iapws97 import _Region1, _PSat_T, _TSat_P
from iapws.iapws95 import IAPWS95
from iapws._iapws import _Liquid, _Viscosity, _ThCond, _Tension, _Henry
K = 273.15
liquid = [_Liquid(t + K, 0.1) for t in given["supercooled"]]
one = [_Region1(t + K, 0.1) for t in given["liquid"]]
pressed = [_Region1(t + K, p / 1e6) for t in given["few"] for p in given["pressures"]]
helmholtz = [IAPWS95(T=t + K, P=0.1) for t in given["few"]]
answer = {
  "rho": [x["rho"] for x in liquid], "cp": [1000 * x["cp"] for x in liquid],
  "mu": [x["mu"] for x in liquid], "k": [x["k"] for x in liquid],
  "rho97": [1 / x["v"] for x in one], "cp97": [1000 * x["cp"] for x in one],
  "rho95": [x.rho for x in helmholtz], "cp95": [1000 * x.cp for x in helmholtz],
  "mu95": [x.mu for x in helmholtz], "k95": [x.k for x in helmholtz],
  "v": [x["v"] for x in pressed], "h": [1000 * x["h"] for x in pressed], "w": [x["w"] for x in pressed],
  "psat": [1e6 * _PSat_T(t + K) for t in given["saturation"]],
  "tsat": [_TSat_P(p / 1e6) - K for p in given["saturationPa"]],
  "psat95": [1e6 * IAPWS95(T=t + K, x=0).P for t in given["few"]],
  "muOf": [_Viscosity(1000 - t, t + K) for t in given["liquid"]],
  "kOf": [_ThCond(1000 - t, t + K) for t in given["liquid"]],
  "sigma": [_Tension(t + K) for t in given["liquid"]],
  "henry": [1e6 * _Henry(t + K, gas) for gas in ("N2", "O2", "CO2") for t in given["few"]],
}
`;

suiteNeeding(['python-iapws'], 'the properties of water, as the Python library iapws has them', () => {
  let theirs: Record<string, readonly number[]> = {};
  const of = (name: string): readonly number[] => theirs[name] ?? [];
  const at = (temperatures: readonly number[], equation: (t: Celsius) => number): readonly number[] =>
    temperatures.map((t) => equation(celsius(t)));

  beforeAll(async () => {
    theirs = await askPython(pathOf('python-iapws'), script, {
      supercooled: supercooledC,
      liquid: liquidC,
      saturation: saturationC,
      saturationPa,
      few: fewC,
      pressures: pressuresPa,
    });
  });

  /** One equation in two programs: they differ by rounding only. */
  it.each([
    ['rho', liquidWaterDensity],
    ['cp', liquidWaterHeatCapacity],
    ['mu', liquidWaterViscosity],
    ['k', liquidWaterThermalConductivity],
  ] as const)('are the same by SR6-08 from −20 to 110 °C: %s', (name, equation) => {
    expect(worstShare(at(supercooledC, equation), of(name))).toBeLessThan(1e-9);
  });

  it('are the same on the saturation line of IF97, both ways', () => {
    expect(worstShare(at(saturationC, saturationPressure), of('psat'))).toBeLessThan(1e-9);
    const ours = saturationPa.map((p) => saturationTemperature(pascalAbsolute(p)));
    expect(worstDifference(ours, of('tsat'))).toBeLessThan(1e-8);
  });

  it('are the same by region 1 of IF97 from a deep vacuum to 5 MPa', () => {
    const ours = fewC.flatMap((t) => pressuresPa.map((p) => waterOfRegion1(celsius(t), pascalAbsolute(p))));
    expect(
      worstShare(
        ours.map(({ volume }) => volume),
        of('v'),
      ),
    ).toBeLessThan(1e-9);
    expect(
      worstShare(
        ours.map(({ enthalpy }) => enthalpy),
        of('h'),
      ),
    ).toBeLessThan(1e-9);
    expect(
      worstShare(
        ours.map(({ soundSpeed }) => soundSpeed),
        of('w'),
      ),
    ).toBeLessThan(1e-9);
  });

  it('are the same by the releases of viscosity, conductivity, surface tension and Henry’s constants', () => {
    const dense = (equation: typeof waterViscosity): readonly number[] =>
      liquidC.map((t) => equation(celsius(t), kilogramPerCubicMetre(1000 - t)));
    expect(worstShare(dense(waterViscosity), of('muOf'))).toBeLessThan(1e-9);
    // Theirs has the critical enhancement, which ours leaves out: below 0.3 % in liquid water.
    expect(worstShare(dense(waterThermalConductivity), of('kOf'))).toBeLessThan(0.003);
    expect(worstShare(at(liquidC, surfaceTension), of('sigma'))).toBeLessThan(1e-9);
    const henry = (['N2', 'O2', 'CO2'] as const).flatMap((gas) => at(fewC, (t) => henryConstant(gas, t)));
    expect(worstShare(henry, of('henry'))).toBeLessThan(1e-9);
  });

  /** Another equation of the same substance: IF97 states 0.001 % for density, SR6-08 for heat capacity 0.1 %. */
  it('are near those of IF97, which is another equation', () => {
    expect(worstShare(at(liquidC, liquidWaterDensity), of('rho97'))).toBeLessThan(3e-5);
    expect(worstShare(at(liquidC, liquidWaterHeatCapacity), of('cp97'))).toBeLessThan(1e-3);
  });

  /** IAPWS-95 is what SR6-08 and IF97 were fitted to; the transport equations state 1 to 2 %. */
  it('are near those of IAPWS-95, which the shorter equations were fitted to', () => {
    expect(worstShare(at(fewC, liquidWaterDensity), of('rho95'))).toBeLessThan(1e-5);
    expect(worstShare(at(fewC, liquidWaterHeatCapacity), of('cp95'))).toBeLessThan(5e-4);
    expect(worstShare(at(fewC, liquidWaterViscosity), of('mu95'))).toBeLessThan(0.01);
    expect(worstShare(at(fewC, liquidWaterThermalConductivity), of('k95'))).toBeLessThan(0.01);
    expect(worstShare(at(fewC, saturationPressure), of('psat95'))).toBeLessThan(1e-3);
  });
});
