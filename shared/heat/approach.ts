import { kelvinDifference, type Celsius, type KelvinDifference } from '../units/quantity';

/** Approach of a liquid-to-liquid exchanger: supply of the loop minus supply of the facility water. 3 … 5 K at rated duty is common practice, no source. */
export const approach = (supply: Celsius, facilitySupply: Celsius): KelvinDifference =>
  kelvinDifference(supply - facilitySupply);
