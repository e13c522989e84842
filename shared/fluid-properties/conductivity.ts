import type { Celsius } from '../units/quantity';

/** Temperature coefficient of dilute salt solutions, 1/K (ISO 7888; from memory: 1.9 … 2.2 %/K). */
export const conductivityCoefficient = 0.02;

/** Electrical conductivity brought to 25 °C: κ ÷ (1 + α (t − 25)), linear form of ISO 7888. In the unit of the reading. */
export const conductivityAt25 = (
  reading: number,
  temperature: Celsius,
  coefficient = conductivityCoefficient,
): number => reading / (1 + coefficient * (temperature - 25));
