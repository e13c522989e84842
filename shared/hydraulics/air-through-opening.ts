import { airGasConstant, airHeatCapacityRatio } from '../fluid-properties/air';
import { zeroCelsiusK } from '../units/constants';
import { kilogramPerSecond, type Celsius, type KilogramPerSecond, type PascalAbsolute } from '../units/quantity';

/** p₁/p₀ = (2/(κ+1))^(κ/(κ−1)): at or below it the flow is choked (NACA Report 1135). 0.5283 for air. */
export const criticalPressureRatio = (kappa: number): number => (2 / (kappa + 1)) ** (kappa / (kappa - 1));

/** C of q_m = C C_d A p₀/√T₀ when choked, s √K/m (NACA Report 1135). 0.0404 for air. */
export const chokedFlowConstant = (kappa: number, gasConstant: number): number =>
  Math.sqrt(kappa / gasConstant) * (2 / (kappa + 1)) ** ((kappa + 1) / (2 * (kappa - 1)));

const airCriticalRatio = criticalPressureRatio(airHeatCapacityRatio);
const airChokedConstant = chokedFlowConstant(airHeatCapacityRatio, airGasConstant);

/**
 * Room air drawn through an opening into the loop, kg/s; isentropic, ideal gas (NACA Report 1135). Choked below
 * 0.528 of ambient (53.5 kPa at sea level): from there on the loop's pressure no longer matters. 0 where the loop is not
 * below ambient. `dischargeCoefficient` 0.6 (sharp edge) to 0.85 (long hole): common practice, no source.
 */
export function airThroughOpening(
  dischargeCoefficient: number,
  areaM2: number,
  ambient: PascalAbsolute,
  ambientTemperature: Celsius,
  loop: PascalAbsolute,
): KilogramPerSecond {
  const kelvin = ambientTemperature + zeroCelsiusK;
  const ratio = loop / ambient;
  if (ratio >= 1) return kilogramPerSecond(0);
  if (ratio <= airCriticalRatio) {
    return kilogramPerSecond((dischargeCoefficient * areaM2 * ambient * airChokedConstant) / Math.sqrt(kelvin));
  }
  const k = airHeatCapacityRatio;
  const expansion = ((2 * k) / ((k - 1) * airGasConstant * kelvin)) * (ratio ** (2 / k) - ratio ** ((k + 1) / k));
  return kilogramPerSecond(dischargeCoefficient * areaM2 * ambient * Math.sqrt(expansion));
}
