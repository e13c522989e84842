import { freeAirDensity, freeAirK, freeAirPa } from '../fluid-properties/air';
import { zeroCelsiusK } from '../units/constants';
import {
  freeAirCubicMetrePerSecond,
  type Celsius,
  type FreeAirCubicMetrePerSecond,
  type KilogramPerSecond,
} from '../units/quantity';

/** Air mass flow as free air (20 °C, 101.325 kPa). */
export const freeAirOfMass = (massFlow: KilogramPerSecond): FreeAirCubicMetrePerSecond =>
  freeAirCubicMetrePerSecond(massFlow / freeAirDensity);

/** Throughput Q = p q_V (Pa m³/s) of dry gas at its temperature, as free air: Q/p_f × T_f/T (ideal gas). */
export const freeAirOfThroughput = (throughput: number, gas: Celsius): FreeAirCubicMetrePerSecond =>
  freeAirCubicMetrePerSecond((throughput / freeAirPa) * (freeAirK / (gas + zeroCelsiusK)));
