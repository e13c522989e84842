import { zeroCelsiusK } from '../units/constants';
import type { Celsius } from '../units/quantity';

/** Gases whose Henry constants are known here. */
export type DissolvedGas = 'N2' | 'O2' | 'CO2';

/** IAPWS G7-04, table 2: A, B, C, and table 1: temperatures of the data, K. */
const gases: Readonly<Record<DissolvedGas, readonly [a: number, b: number, c: number, from: number, to: number]>> = {
  N2: [-9.67578, 4.72162, 11.70585, 278.12, 636.46],
  O2: [-9.44833, 4.43822, 11.42005, 274.15, 616.52],
  CO2: [-8.55445, 4.01195, 9.52345, 274.19, 642.66],
};

/** G7-04 equation 4 and its table 4: Wagner form of the vapour pressure (1993), Pa. */
const criticalK = 647.096;
const criticalPa = 22.064e6;
const wagner: readonly (readonly [a: number, b: number])[] = [
  [-7.85951783, 1],
  [1.84408259, 1.5],
  [-11.7866497, 3],
  [22.6807411, 3.5],
  [-15.9618719, 4],
  [1.80122502, 7.5],
];

/**
 * k_H, Pa: partial pressure over water per mole fraction dissolved in it, p = k_H x. IAPWS G7-04 equation 3; in the range of the
 * gas's data (nitrogen from 5 °C, the others from about 1 °C); NaN outside.
 */
export function henryConstant(gas: DissolvedGas, temperature: Celsius): number {
  const [a, b, c, from, to] = gases[gas];
  const kelvin = temperature + zeroCelsiusK;
  if (!(kelvin >= from && kelvin <= to)) return Number.NaN;
  const reduced = kelvin / criticalK;
  const tau = 1 - reduced;
  const vapour = wagner.reduce((sum, [factor, power]) => sum + factor * tau ** power, 0) / reduced;
  return (
    criticalPa * Math.exp(vapour + a / reduced + (b * tau ** 0.355) / reduced + c * reduced ** -0.41 * Math.exp(tau))
  );
}
