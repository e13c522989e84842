/** How each quantity of the contract is shown: the one place that knows units as people read them, and their decimals. */
import type { QuantityKind } from '@ebbline/shared/contract/point-table';
import { metricByPoint, metricByQuantity } from './metric-units';
import type { DisplayUnit } from './shown-unit';
import { unitSystem } from './unit-system';
import { feet, usByPoint, usByQuantity, usByUcum } from './us-units';

export type { DisplayUnit } from './shown-unit';

/** Until a tank is empty or full: below this in seconds, as minutes would hide how little is left. */
const shortSeconds = 180;
const inSeconds: DisplayUnit = { unit: 's', factor: 1, decimals: 0 };

/** One chip's power in W, every other in kW whatever its size: a unit that follows the value would jump with it. */
function powerUnit(watts: number, pattern: string | undefined): DisplayUnit {
  if (pattern?.startsWith('plate.') === true || pattern?.startsWith('server.') === true) return metricByQuantity.power;
  return { unit: 'kW', factor: 1e-3, decimals: Math.abs(watts) < 1e4 ? 2 : 0 };
}

/**
 * @param value in the contract's unit of measure; only the decimals of a power look at it
 * @param pattern point id with `<id>` in place of a branch or plate, where the value is a point's
 */
export function displayUnitOf(quantity: QuantityKind, value: number, pattern = ''): DisplayUnit {
  if (quantity === 'power') return powerUnit(value, pattern);
  if (quantity === 'duration' && pattern.startsWith('timeTo') && Math.abs(value) < shortSeconds) return inSeconds;
  const us = unitSystem() === 'us';
  const ofPoint = us ? (usByPoint[pattern] ?? metricByPoint[pattern]) : metricByPoint[pattern];
  return ofPoint ?? (us ? usByQuantity[quantity] : undefined) ?? metricByQuantity[quantity];
}

/** By how much something of this quantity moved or may be off: no nought of a scale, no absolute pressure. */
export function differenceUnit(quantity: QuantityKind, value: number, pattern = ''): DisplayUnit {
  const kind =
    quantity === 'temperature'
      ? 'temperatureDifference'
      : quantity === 'absolutePressure'
        ? 'pressureDifference'
        : quantity;
  return displayUnitOf(kind, value, pattern);
}

const metres: DisplayUnit = { unit: 'm', factor: 1, decimals: 1 };
/** Heights of the plant; levels of a tank are read finer, as a quantity of their own. */
export const heightUnit = (): DisplayUnit => (unitSystem() === 'us' ? feet : metres);

/** Where labels of an axis of absolute pressure stand apart, Pa: round numbers in the unit that is read. */
export const pressureStep = (): number => (unitSystem() === 'us' ? 3 / usPsiPerPa : 20_000);
const usPsiPerPa = usByQuantity.absolutePressure?.factor ?? 1;

/** At what free air is counted: both are the same state. */
export const freeAirState = (): string =>
  unitSystem() === 'us' ? '68\u00a0°F and 14.7\u00a0psia' : '20\u00a0°C and 101.3\u00a0kPa';

const quantityOfUcum: { readonly [ucum: string]: QuantityKind } = {
  Cel: 'temperature',
  K: 'temperatureDifference',
  Pa: 'pressureDifference',
  'm3/s': 'volumeFlow',
  'kg/s': 'massFlow',
  m: 'level',
  W: 'power',
  'S/m': 'conductivity',
  '{NTU}': 'turbidity',
  'kg/m3': 'concentration',
  'W/K': 'thermalConductance',
  'K/W': 'thermalResistance',
  'm/s': 'velocity',
  'W/m2': 'heatFlux',
  'W/(m2.K)': 'filmCoefficient',
  'm2.K/W': 'foulingFactor',
  m3: 'volume',
  s: 'duration',
  '{CFU}/mL': 'bacteria',
};

/** Codes in which only the value and limit of an alarm come, no point. */
const displayOfUcum: { readonly [ucum: string]: DisplayUnit } = {
  'K/s': { unit: 'K/min', factor: 60, decimals: 1 },
};

export const displayUnitOfUcum = (ucum: string): DisplayUnit | undefined =>
  (unitSystem() === 'us' ? usByUcum[ucum] : undefined) ?? displayOfUcum[ucum];

/** For a value that comes with nothing but its UCUM code; undefined where the code alone does not say what it is. */
export const quantityOfUnit = (ucum: string): QuantityKind | undefined => quantityOfUcum[ucum];
