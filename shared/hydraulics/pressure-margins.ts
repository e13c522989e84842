import {
  kelvinDifference,
  metre,
  pascalDifference,
  type Celsius,
  type KelvinDifference,
  type KilogramPerCubicMetre,
  type Metre,
  type PascalAbsolute,
  type PascalDifference,
} from '../units/quantity';
import { saturationPressure } from '../fluid-properties/saturation-pressure';
import { saturationTemperature } from '../fluid-properties/saturation-temperature';
import { staticHead } from './static-head';

/** Vacuum margin: ambient minus the highest absolute pressure of a wetted place. Above 0 an opening draws air in; below, water comes out. */
export const vacuumMargin = (ambient: PascalAbsolute, highest: PascalAbsolute): PascalDifference =>
  pascalDifference(ambient - highest);

/** Boiling margin as pressure: p − p_v(t), with the place's own temperature. NaN outside 0 … 373.9 °C. */
export const boilingMargin = (pressure: PascalAbsolute, temperature: Celsius): PascalDifference =>
  pascalDifference(pressure - saturationPressure(temperature));

/** Boiling margin as temperature: t_sat(p) − t. */
export const subcooling = (pressure: PascalAbsolute, temperature: Celsius): KelvinDifference =>
  kelvinDifference(saturationTemperature(pressure) - temperature);

/** Pressure that moves the water: supply side minus return side, each with its elevation; mean density of both legs. */
export const drivingPressure = (
  supply: PascalAbsolute,
  supplyElevation: Metre,
  returned: PascalAbsolute,
  returnElevation: Metre,
  meanDensity: KilogramPerCubicMetre,
): PascalDifference =>
  pascalDifference(supply - returned + staticHead(meanDensity, metre(supplyElevation - returnElevation)));
