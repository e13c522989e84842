import { zeroCelsiusK } from '../units/constants';
import {
  kilogramPerCubicMetre,
  type Celsius,
  type KilogramPerCubicMetre,
  type PascalAbsolute,
} from '../units/quantity';
import { region1 } from './if97-region-1-coefficients';

/** IAPWS R7-97(2012): specific gas constant, J/(kg K), and the reducing pressure and temperature of region 1. */
const gasConstant = 461.526;
const reducingPa = 16.53e6;
const reducingK = 1386;

export interface Region1 {
  /** m³/kg. */
  readonly volume: number;
  /** J/kg. */
  readonly enthalpy: number;
  readonly internalEnergy: number;
  /** J/(kg K). */
  readonly entropy: number;
  readonly heatCapacity: number;
  /** m/s. */
  readonly soundSpeed: number;
}

const none: Region1 = {
  volume: Number.NaN,
  enthalpy: Number.NaN,
  internalEnergy: Number.NaN,
  entropy: Number.NaN,
  heatCapacity: Number.NaN,
  soundSpeed: Number.NaN,
};

/**
 * Liquid water by temperature and pressure. IAPWS R7-97(2012) equation 7 and table 3, 0 … 350 °C, up to 100 MPa; NaN outside.
 * It shows what leaving pressure out costs (0.17 kg/m³ from 20 to 400 kPa); too slow for each second.
 */
export function waterOfRegion1(temperature: Celsius, pressure: PascalAbsolute): Region1 {
  if (!(temperature >= 0 && temperature <= 350 && pressure > 0 && pressure <= 100e6)) return none;
  const kelvin = temperature + zeroCelsiusK;
  const tau = reducingK / kelvin;
  const pi = pressure / reducingPa;
  let g = 0;
  let gp = 0;
  let gpp = 0;
  let gt = 0;
  let gtt = 0;
  let gpt = 0;
  for (const [i, j, n] of region1) {
    const a = 7.1 - pi;
    const b = tau - 1.222;
    const term = n * a ** i * b ** j;
    g += term;
    gp -= (term * i) / a;
    gpp += (term * i * (i - 1)) / (a * a);
    gt += (term * j) / b;
    gtt += (term * j * (j - 1)) / (b * b);
    gpt -= (term * i * j) / (a * b);
  }
  const rt = gasConstant * kelvin;
  const mixed = gp - tau * gpt;
  return {
    volume: (pi * gp * rt) / pressure,
    enthalpy: tau * gt * rt,
    internalEnergy: (tau * gt - pi * gp) * rt,
    entropy: gasConstant * (tau * gt - g),
    heatCapacity: -gasConstant * tau * tau * gtt,
    soundSpeed: Math.sqrt((rt * gp * gp) / ((mixed * mixed) / (tau * tau * gtt) - gpp)),
  };
}

/** kg/m³, with the pressure that SR6-08 leaves out. Range as above. */
export const pressedWaterDensity = (temperature: Celsius, pressure: PascalAbsolute): KilogramPerCubicMetre =>
  kilogramPerCubicMetre(1 / waterOfRegion1(temperature, pressure).volume);
