import type { MassFraction, VolumeFraction } from '../units/quantity';
import type { ValidRange } from './valid-range';

/** Coefficients [power of temperature][power of fraction], both from the equation's own base. */
export type Coefficients = readonly (readonly number[])[];

/** A published set of equations for water with propylene glycol; `Fraction` is what it counts the glycol by. */
export interface GlycolEquations<Fraction extends MassFraction | VolumeFraction> {
  readonly name: string;
  readonly baseC: number;
  readonly baseFraction: Fraction;
  readonly temperature: ValidRange;
  readonly fraction: ValidRange;
  /** kg/m³. */
  readonly density: Coefficients;
  /** J/(kg K). */
  readonly heatCapacity: Coefficients;
  /** W/(m K). */
  readonly thermalConductivity: Coefficients;
  /** Natural logarithm of the viscosity in Pa s. */
  readonly logViscosity: Coefficients;
}

/** Coefficients of the temperature alone, of one mixture: worked out once. */
export const ofMixture = (table: Coefficients, offset: number): readonly [number, number, number, number] => {
  const at = (power: number): number => (table[power] ?? []).reduceRight((sum, value) => sum * offset + value, 0);
  return [at(0), at(1), at(2), at(3)];
};
