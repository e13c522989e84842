import { zeroCelsiusK } from '../units/constants';
import {
  joulePerKilogramKelvin,
  kilogramPerCubicMetre,
  type Celsius,
  type JoulePerKilogramKelvin,
  type KilogramPerCubicMetre,
} from '../units/quantity';
import { withRangeCheck, type ValidRange } from './valid-range';

/**
 * Liquid water at 0.1 MPa by IAPWS SR6-08(2011). Between 20 and 400 kPa the density changes by 0.17 kg/m³
 * only, so pressure is left out. Below 0 °C the values are those of supercooled water.
 */
export const liquidWaterRange: ValidRange = {
  equation: 'IAPWS SR6-08(2011)',
  quantity: 'temperature',
  unit: '°C',
  minimum: -20,
  maximum: 110,
};

/** SR6-08 table 1 and section 3: R, J/(kg K); reference temperature, K; the two poles, K; reference pressure, Pa. */
const specificGasConstant = 461.51805;
const referenceK = 10;
const upperPoleK = 593;
const lowerPoleK = 232;
const referencePa = 0.1e6;

/** Density, kg/m³. SR6-08 equation 2 (coefficients a5 … a10, b5 … b10 of its table 2), −20 … 110 °C; NaN outside. Uncertainty 1 ppm between 0 and 40 °C. */
export function liquidWaterDensity(temperature: Celsius): KilogramPerCubicMetre {
  if (!(temperature >= liquidWaterRange.minimum && temperature <= liquidWaterRange.maximum))
    return kilogramPerCubicMetre(Number.NaN);
  const kelvin = temperature + zeroCelsiusK;
  const alpha = referenceK / (upperPoleK - kelvin);
  const beta = referenceK / (kelvin - lowerPoleK);
  const alpha2 = alpha * alpha;
  const alpha4 = alpha2 * alpha2;
  const ofAlpha =
    alpha4 *
    (6.74458446e3 + alpha * (-2.22521604e5 + alpha2 * (1.00231247e8 + alpha * (-1.63552118e9 + alpha * 8.32299658e9))));
  const ofBeta =
    beta *
    (5.78545292e-3 +
      beta *
        (-1.53195665e-2 +
          beta * (3.11337859e-2 + beta * (-4.23546241e-2 + beta * (3.38713507e-2 + beta * -1.19946761e-2)))));
  return kilogramPerCubicMetre(referencePa / (specificGasConstant * referenceK * (1.93763157e-2 + ofAlpha + ofBeta)));
}

/** Isobaric specific heat, J/(kg K). SR6-08 equation 6 (coefficients c3, a1 … a3, b1 … b4), −20 … 110 °C; NaN outside. */
export function liquidWaterHeatCapacity(temperature: Celsius): JoulePerKilogramKelvin {
  if (!(temperature >= liquidWaterRange.minimum && temperature <= liquidWaterRange.maximum))
    return joulePerKilogramKelvin(Number.NaN);
  const kelvin = temperature + zeroCelsiusK;
  const tau = kelvin / referenceK;
  const alpha = referenceK / (upperPoleK - kelvin);
  const beta = referenceK / (kelvin - lowerPoleK);
  const alpha2 = alpha * alpha;
  const alpha6 = alpha2 * alpha2 * alpha2;
  const beta2 = beta * beta;
  // Exponents n = 4, 5, 7 and m = 2, 3, 4, 5; the factors are n(n + 1) and m(m + 1).
  const ofAlpha = alpha6 * (20 * -1.661470539e5 + alpha * (30 * 2.70878164e6 + alpha2 * 56 * -1.557191544e8));
  const ofBeta =
    beta2 *
    beta2 *
    (6 * -8.237426256e-1 + beta * (12 * 1.908956353 + beta * (20 * -2.017597384 + beta * 30 * 8.546361348e-1)));
  return joulePerKilogramKelvin(-specificGasConstant * (-8.983025854 + tau * (ofAlpha + ofBeta)));
}

/** Viscosity, Pa s. SR6-08 equation for viscosity at 0.1 MPa (its table of four coefficients), −20 … 110 °C; NaN outside. */
export function liquidWaterViscosity(temperature: Celsius): number {
  if (!(temperature >= liquidWaterRange.minimum && temperature <= liquidWaterRange.maximum)) return Number.NaN;
  const t = (temperature + zeroCelsiusK) / 300;
  return 1e-6 * (280.68 * t ** -1.9 + 511.45 * t ** -7.7 + 61.131 * t ** -19.6 + 0.45903 * t ** -40);
}

/** Thermal conductivity, W/(m K). SR6-08 equation for it at 0.1 MPa (its table of four coefficients), −20 … 110 °C; NaN outside. */
export function liquidWaterThermalConductivity(temperature: Celsius): number {
  if (!(temperature >= liquidWaterRange.minimum && temperature <= liquidWaterRange.maximum)) return Number.NaN;
  const t = (temperature + zeroCelsiusK) / 300;
  return 1.663 * t ** -1.15 - 1.7781 * t ** -3.4 + 1.1567 * t ** -6 - 0.432115 * t ** -7.6;
}

export const liquidWaterDensityChecked = withRangeCheck(liquidWaterRange, liquidWaterDensity);
export const liquidWaterHeatCapacityChecked = withRangeCheck(liquidWaterRange, liquidWaterHeatCapacity);
export const liquidWaterViscosityChecked = withRangeCheck(liquidWaterRange, liquidWaterViscosity);
export const liquidWaterThermalConductivityChecked = withRangeCheck(liquidWaterRange, liquidWaterThermalConductivity);
