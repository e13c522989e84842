import { pascalAbsolute, type PascalAbsolute, type PascalDifference, type PascalGauge } from './quantity';

/** How a sensor tells a pressure: against vacuum, against ambient, or how far below ambient (a positive number). */
export const pressureReferences = ['absolute', 'gauge', 'vacuum'] as const;
export type PressureReference = (typeof pressureReferences)[number];

/**
 * p_abs = p_gauge + p_ambient. Ambient must be that of the sensor's place and instant: a fixed
 * 101.325 kPa is off by 17 kPa at 1500 m, and weather moves it by about 3 kPa.
 */
export const gaugeToAbsolute = (gauge: PascalGauge, ambient: PascalAbsolute): PascalAbsolute =>
  pascalAbsolute(gauge + ambient);

/** p_abs = p_ambient − p_vacuum, where the vacuum reading is positive below ambient. */
export const vacuumToAbsolute = (belowAmbient: PascalDifference, ambient: PascalAbsolute): PascalAbsolute =>
  pascalAbsolute(ambient - belowAmbient);
