import { zeroCelsiusK } from '../units/constants';
import type { Celsius, KilogramPerCubicMetre } from '../units/quantity';
import { conductivityTable, viscosityTable } from './water-transport-coefficients';

/** Critical point, K and kg/m³ (IAPWS R12-08 and R15-11, section 2.2 of each). */
const criticalK = 647.096;
const criticalDensity = 322;

/** Dilute gas: H of R12-08 table 1, L of R15-11 table 1. */
const diluteViscosity = [1.67752, 2.20462, 0.6366564, -0.241605];
const diluteConductivity = [2.443221e-3, 1.323095e-2, 6.770357e-3, -3.454586e-3, 4.096266e-4];

/**
 * Viscosity of water, Pa s, by temperature and density. IAPWS R12-08 equations 10 … 12 without the critical enhancement, as the
 * release allows for industrial use; liquid and vapour, 0 … 900 °C; NaN outside. A check of the shorter SR6-08 equation.
 */
export const waterViscosity = (temperature: Celsius, density: KilogramPerCubicMetre): number =>
  1e-6 * 100 * reduced(temperature, density, diluteViscosity, viscosityTable);

/**
 * Thermal conductivity of water, W/(m K). IAPWS R15-11 equations 15 … 17 without the critical enhancement (below 0.3 % in liquid
 * water far from the critical point, from memory); 0 … 900 °C; NaN outside.
 */
export const waterThermalConductivity = (temperature: Celsius, density: KilogramPerCubicMetre): number =>
  1e-3 * reduced(temperature, density, diluteConductivity, conductivityTable);

function reduced(
  temperature: Celsius,
  density: KilogramPerCubicMetre,
  dilute: readonly number[],
  residual: readonly (readonly [i: number, j: number, factor: number])[],
): number {
  if (!(temperature >= 0 && temperature <= 900 && density >= 0)) return Number.NaN;
  const t = (temperature + zeroCelsiusK) / criticalK;
  const d = density / criticalDensity;
  const gas = Math.sqrt(t) / dilute.reduce((sum, factor, i) => sum + factor / t ** i, 0);
  const excess = residual.reduce((sum, [i, j, factor]) => sum + factor * (1 / t - 1) ** i * (d - 1) ** j, 0);
  return gas * Math.exp(d * excess);
}
