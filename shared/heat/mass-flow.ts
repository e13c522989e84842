import {
  kilogramPerSecond,
  type CubicMetrePerSecond,
  type KilogramPerCubicMetre,
  type KilogramPerSecond,
} from '../units/quantity';

/**
 * q_m = ρ q_V (mass balance). The density is that of the water at the volume meter, not of the mean or the
 * supply: 15 K between them is 0.55 % of the flow.
 */
export const massFlow = (densityAtMeter: KilogramPerCubicMetre, volumeFlow: CubicMetrePerSecond): KilogramPerSecond =>
  kilogramPerSecond(densityAtMeter * volumeFlow);
