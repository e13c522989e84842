import { freeAirK, freeAirPa } from '../fluid-properties/air';

/** Molar mass of water, kg/mol (IUPAC), and molar gas constant, J/(mol K) (CODATA, exact). */
const waterKgPerMol = 0.018015268;
const gasConstant = 8.314462618;

/** Water per mole of dry gas that leaves saturated: p_v/(p − p_v) (Dalton). NaN where the water boils. */
export const vapourPerDryGas = (pressure: number, vapourPressure: number): number =>
  vapourPressure < pressure ? vapourPressure / (pressure - vapourPressure) : Number.NaN;

/**
 * Water that dry gas carries out as vapour, kg/s: n_gas p_v/(p − p_v) M_w, with n_gas = p_f q_f/(R T_f) of a free-air flow
 * q_f (Dalton, ideal gas). The gas is taken as saturated over the water it comes from.
 */
export const exhaustWater = (freeAirM3PerS: number, pressure: number, vapourPressure: number): number =>
  ((freeAirM3PerS * freeAirPa) / (gasConstant * freeAirK)) * vapourPerDryGas(pressure, vapourPressure) * waterKgPerMol;
