import { watt, type Celsius, type JoulePerKilogramKelvin, type KilogramPerSecond, type Watt } from '../units/quantity';
import { differenceUncertainty } from '../uncertainty/combine';

/** Q = q_m c_p (t_return − t_supply), W; first law, steady flow. c_p at the mean temperature. Negative where the water cools. */
export const heatRate = (
  massFlow: KilogramPerSecond,
  heatCapacity: JoulePerKilogramKelvin,
  supply: Celsius,
  returned: Celsius,
): Watt => watt(massFlow * heatCapacity * (returned - supply));

/**
 * Standard uncertainty of `heatRate`, W (GUM eq. 10, 13 and 16):
 * u(Q)² = (c_p ΔT u(q_m))² + (q_m ΔT u(c_p))² + (q_m c_p u(ΔT))². `correlation` is that of the two temperature errors.
 */
export function heatRateUncertainty(
  massFlow: KilogramPerSecond,
  massFlowU: number,
  heatCapacity: JoulePerKilogramKelvin,
  heatCapacityU: number,
  difference: number,
  supplyU: number,
  returnU: number,
  correlation = 0,
): number {
  const ofFlow = heatCapacity * difference * massFlowU;
  const ofCapacity = massFlow * difference * heatCapacityU;
  const ofDifference = massFlow * heatCapacity * differenceUncertainty(supplyU, returnU, correlation);
  return Math.sqrt(ofFlow * ofFlow + ofCapacity * ofCapacity + ofDifference * ofDifference);
}
