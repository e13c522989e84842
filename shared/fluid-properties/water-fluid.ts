import type { Fluid } from './fluid';
import {
  liquidWaterDensity,
  liquidWaterHeatCapacity,
  liquidWaterRange,
  liquidWaterThermalConductivity,
  liquidWaterViscosity,
} from './liquid-water';
import { saturationPressure, saturationPressureSlope } from './saturation-pressure';

/** Water by IAPWS SR6-08(2011). u(c_p)/c_p: IAPWS-95 states 0.1 % for liquid water at 0.1 MPa (from memory); taken as standard uncertainty. */
export const waterFluid: Fluid = {
  name: 'water',
  source: 'IAPWS SR6-08(2011)',
  minimumC: liquidWaterRange.minimum,
  maximumC: liquidWaterRange.maximum,
  heatCapacityRelativeU: 0.001,
  density: liquidWaterDensity,
  heatCapacity: liquidWaterHeatCapacity,
  viscosity: liquidWaterViscosity,
  thermalConductivity: liquidWaterThermalConductivity,
  vapourPressure: saturationPressure,
  vapourPressureSlope: saturationPressureSlope,
};
