/** Mean water temperature along a plate, °C: T_in + P/(2 q_m c_p) (first law, half of the rise). */
export const meanWaterTemperature = (inC: number, powerW: number, capacityRateWPerK: number): number =>
  inC + powerW / (2 * capacityRateWPerK);

/** Resistance referred to the mean water temperature, K/W: (T − T_in)/P − 1/(2 q_m c_p). */
export const meanReferredResistance = (caseC: number, inC: number, powerW: number, capacityRateWPerK: number): number =>
  (caseC - meanWaterTemperature(inC, powerW, capacityRateWPerK)) / powerW;

/**
 * Film coefficient in a plate, W/(m²K), of the wetted area as a whole: h = 1/(A (R_mean − R_wall)), with R_wall from chip case to
 * wetted wall (Newton's law of cooling; Bergman et al., 7th ed., eq. 1.3a). The efficiency of fins is in it.
 */
export const filmCoefficient = (resistanceToMean: number, wallResistance: number, wettedAreaM2: number): number =>
  1 / (wettedAreaM2 * (resistanceToMean - wallResistance));
