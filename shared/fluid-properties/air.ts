import { standardAtmospherePa } from '../units/constants';

/** Specific gas constant of dry air, J/(kg K) (ISO 2533:1975). */
export const airGasConstant = 287.05287;

/** Ratio of specific heats of air near room temperature (ISO 2533:1975). */
export const airHeatCapacityRatio = 1.4;

/** "Free air" of this project: 20 °C and 101.325 kPa (common practice of vacuum pump makers; said with every such flow). */
export const freeAirK = 293.15;
export const freeAirPa = standardAtmospherePa;

/** kg/m³ by the ideal gas law. */
export const freeAirDensity = freeAirPa / (airGasConstant * freeAirK);
