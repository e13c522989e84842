import { kelvinDifference, type Celsius, type KelvinDifference } from '../units/quantity';

/** How much warmer water leaves than it came, K. */
export const temperatureRise = (out: Celsius, into: Celsius): KelvinDifference => kelvinDifference(out - into);
