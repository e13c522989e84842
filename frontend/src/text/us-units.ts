import type { QuantityKind } from '@ebbline/shared/contract/point-table';
import type { DisplayUnit } from './shown-unit';

/**
 * Units of the trade in the United States, in place of the metric ones; what is not named here is read alike in both.
 * Factors by their definitions (NIST SP 811, 2008 edition, appendix B).
 *
 * Heat and power stay in kW: heat is held against the electrical power of the chips, and one figure can be
 * compared with the other only in one unit. Pressures are psia or psi, never inches of mercury: those count a vacuum
 * downwards, and the strip reads from vacuum up to room air on one axis.
 */
const inchM = 0.0254;
const footM = 12 * inchM;
const poundKg = 0.45359237;
const psiPa = (poundKg * 9.80665) / inchM ** 2;
const gallonM3 = 231 * inchM ** 3;
/** Kelvin or degrees Celsius to degrees Fahrenheit, of a difference. */
const fahrenheitPerKelvin = 1.8;
/** International table. J */
const btuJ = 1055.05585262;
/** W/(m²·K) in one BTU/(h·ft²·°F). */
const filmUnit = (btuJ * fahrenheitPerKelvin) / (3600 * footM ** 2);

export const usByQuantity: { readonly [K in QuantityKind]?: DisplayUnit } = {
  temperature: { unit: '°F', factor: fahrenheitPerKelvin, offset: 32, decimals: 1 },
  temperatureDifference: { unit: '°F', factor: fahrenheitPerKelvin, decimals: 1 },
  absolutePressure: { unit: 'psia', factor: 1 / psiPa, decimals: 2 },
  pressureDifference: { unit: 'psi', factor: 1 / psiPa, decimals: 2 },
  volumeFlow: { unit: 'gpm', factor: 60 / gallonM3, decimals: 2 },
  freeAirFlow: { unit: 'ft³/h free air', factor: 3600 / footM ** 3, decimals: 1 },
  massFlow: { unit: 'lb/s', factor: 1 / poundKg, decimals: 2 },
  level: { unit: 'in', factor: 1 / inchM, decimals: 2 },
  thermalConductance: { unit: 'kW/°F', factor: 1e-3 / fahrenheitPerKelvin, decimals: 2 },
  thermalResistance: { unit: '°F/W', factor: fahrenheitPerKelvin, decimals: 4 },
  velocity: { unit: 'ft/s', factor: 1 / footM, decimals: 2 },
  filmCoefficient: { unit: 'BTU/(h·ft²·°F)', factor: 1 / filmUnit, decimals: 0 },
  foulingFactor: { unit: 'h·ft²·°F/BTU', factor: filmUnit, decimals: 5 },
  volume: { unit: 'gal', factor: 1 / gallonM3, decimals: 2 },
};

const gallonsPerDay: DisplayUnit = { unit: 'gal/d', factor: 86_400 / gallonM3, decimals: 2 };
const smallBore: DisplayUnit = { unit: 'in', factor: 1 / inchM, decimals: 3 };

export const usByPoint: { readonly [point: string]: DisplayUnit } = {
  foulingResistance: { unit: '°F/MW', factor: 1e6 * fahrenheitPerKelvin, decimals: 2 },
  largestOpeningCarried: smallBore,
  equivalentHole: { ...smallBore, decimals: 4 },
  equivalentHoleSupply: { ...smallBore, decimals: 4 },
  // A head of water is read in feet, a level in inches.
  npshAvailable: { unit: 'ft', factor: 1 / footM, decimals: 1 },
  topUpRate: { unit: 'gal/h', factor: 3600 / gallonM3, decimals: 2 },
  exhaustWaterLoss: gallonsPerDay,
  waterBalance: gallonsPerDay,
};

/** Alarms' rates of a temperature, by UCUM code. */
export const usByUcum: { readonly [ucum: string]: DisplayUnit } = {
  'K/s': { unit: '°F/min', factor: 60 * fahrenheitPerKelvin, decimals: 1 },
};

/** A metric unit as people write it, to the US one: for what comes from the server with its unit in words. */
export const usOfWritten: { readonly [unit: string]: Omit<DisplayUnit, 'decimals'> } = {
  '°C': { unit: '°F', factor: fahrenheitPerKelvin, offset: 32 },
  K: { unit: '°F', factor: fahrenheitPerKelvin },
  kPa: { unit: 'psi', factor: 1000 / psiPa },
  'kPa absolute': { unit: 'psia', factor: 1000 / psiPa },
  'L/min': { unit: 'gpm', factor: 1e-3 / gallonM3 },
  'free L/min': { unit: 'ft³/h free air', factor: 0.06 / footM ** 3 },
  'L/min free air': { unit: 'ft³/h free air', factor: 0.06 / footM ** 3 },
  L: { unit: 'gal', factor: 1e-3 / gallonM3 },
  litres: { unit: 'gal', factor: 1e-3 / gallonM3 },
  mm: { unit: 'in', factor: 1e-3 / inchM },
  'K/W': { unit: '°F/W', factor: fahrenheitPerKelvin },
};

/** Figures of the site file by UCUM code, from SI; a height or length of a plant in feet. */
export const usOfSiteFigure: { readonly [ucum: string]: Omit<DisplayUnit, 'decimals'> } = {
  Cel: { unit: '°F', factor: fahrenheitPerKelvin, offset: 32 },
  K: { unit: '°F', factor: fahrenheitPerKelvin },
  Pa: { unit: 'psi', factor: 1 / psiPa },
  'W/K': { unit: 'kW/°F', factor: 1e-3 / fahrenheitPerKelvin },
  'K/W': { unit: '°F/W', factor: fahrenheitPerKelvin },
  'm3/s': { unit: 'gpm', factor: 60 / gallonM3 },
  'kg/s': { unit: 'lb/s', factor: 1 / poundKg },
  m3: { unit: 'gal', factor: 1 / gallonM3 },
  m: { unit: 'ft', factor: 1 / footM },
};

/** Heights of places along the way. */
export const feet: DisplayUnit = { unit: 'ft', factor: 1 / footM, decimals: 1 };
