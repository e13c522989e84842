/**
 * Water and gas as this plant takes them: one density and one heat capacity for the whole loop
 * (20 to 60 °C, they vary by 1.5 % and 0.1 %), so that volumes and masses can be summed exactly.
 */
import { saturationPressurePa } from './vapour-pressure';

/** Water at 42 °C, kg/m³ and J/(kg·K). Source: IAPWS SR6-08, rounded. */
export const waterDensityKgPerM3 = 991.4;
export const waterHeatJPerKgK = 4179;
/** Heat to lift one m³ of water by one kelvin, J/(m³·K). */
export const waterHeatJPerM3K = waterDensityKgPerM3 * waterHeatJPerKgK;
/** Pressure of one metre of that water, Pa/m. */
export const headPaPerM = waterDensityKgPerM3 * 9.80665;
/** Heat of evaporation near 45 °C, J/kg. Source: steam tables, from memory. */
export const evaporationJPerKg = 2.394e6;
export const waterMolarMassKg = 0.018015;
export const airMolarMassKg = 0.028965;

/** CODATA. J/(mol·K) */
export const gasConstant = 8.314462618;
/** Free air: 20 °C, 101.325 kPa, mol/m³. */
export const freeAirMolPerM3 = 101325 / (gasConstant * 293.15);

/** Pressure of a saturated gas space: dry gas plus vapour of the water below it, Pa absolute. */
export function gasSpacePressurePa(gasMol: number, volumeM3: number, waterC: number): number {
  return (gasMol * gasConstant * (waterC + 273.15)) / volumeM3 + saturationPressurePa(waterC);
}

/** Moles of dry gas that hold such a space at a pressure. */
export function gasSpaceMol(pressurePa: number, volumeM3: number, waterC: number): number {
  return ((pressurePa - saturationPressurePa(waterC)) * volumeM3) / (gasConstant * (waterC + 273.15));
}

/** Volume of gas bubbles in water, m³: they hold dry gas and vapour. */
export function bubbleVolumeM3(gasMol: number, pressurePa: number, waterC: number): number {
  const dryPa = Math.max(2000, pressurePa - saturationPressurePa(waterC));
  return (gasMol * gasConstant * (waterC + 273.15)) / dryPa;
}
