import type { Celsius, JoulePerKilogramKelvin, KilogramPerCubicMetre, PascalAbsolute } from '../units/quantity';

/** What flows on one side of a unit: its properties at the pressures of a cooling loop, NaN outside their range, never an extrapolation. */
export interface Fluid {
  /** As a person reads it: `water`, `25 % propylene glycol by volume`. */
  readonly name: string;
  /** Publication of the equations. */
  readonly source: string;
  /** Where all of density, heat capacity, viscosity and conductivity hold, °C. */
  readonly minimumC: number;
  readonly maximumC: number;
  /** Standard uncertainty of the heat capacity over itself. */
  readonly heatCapacityRelativeU: number;
  /** kg/m³. */
  readonly density: (temperature: Celsius) => KilogramPerCubicMetre;
  /** J/(kg K), isobaric. */
  readonly heatCapacity: (temperature: Celsius) => JoulePerKilogramKelvin;
  /** Pa s. */
  readonly viscosity: (temperature: Celsius) => number;
  /** W/(m K). */
  readonly thermalConductivity: (temperature: Celsius) => number;
  /** At which it boils, or an upper bound of it. */
  readonly vapourPressure: (temperature: Celsius) => PascalAbsolute;
  /** Its derivative, Pa/K. */
  readonly vapourPressureSlope: (temperature: Celsius) => number;
}
