/**
 * Gas that collects in a closed volume, Pa m³/s: Q = d(p V)/dt at constant temperature (pressure-rise test; 40 CFR
 * 1065.644 has the same as moles). With p the pressure of the dry gas, vapour left out (Dalton).
 */
export const pressureRise = (from: number, to: number, seconds: number): number => (to - from) / seconds;

/** p V of the dry gas over water, Pa m³. */
export const gasContent = (pressure: number, vapourPressure: number, volumeM3: number): number =>
  (pressure - vapourPressure) * volumeM3;
