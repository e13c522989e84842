import { watt, type CubicMetrePerSecond, type PascalDifference, type Watt } from '../units/quantity';

/** Power that a pump gives the water, W: P = q Δp = ρ g q H (ISO 9906:2012, pump power output; equal heights and bores). */
export const pumpHydraulicPower = (flow: CubicMetrePerSecond, rise: PascalDifference): Watt => watt(flow * rise);

/** Overall efficiency, wire to water (ISO 9906:2012). `power` is active electrical power, drive loss included. */
export const pumpEfficiency = (flow: CubicMetrePerSecond, rise: PascalDifference, power: Watt): number =>
  pumpHydraulicPower(flow, rise) / power;
