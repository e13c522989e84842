/** Chip case at full power with the water that it has now, °C: T_in + (T_case − T_in) P_full/P (resistance does not change with power). */
export const temperatureAtFullPower = (caseC: number, inC: number, powerW: number, fullPowerW: number): number =>
  inC + ((caseC - inC) * fullPowerW) / powerW;

/** Heat flux through a chip, W/m²: P/A (definition). */
export const heatFlux = (powerW: number, areaM2: number): number => powerW / areaM2;
