/**
 * Seconds until a mixed thermal mass meets a temperature: C dT/dt = P − (T − T_amb)/R (Bergman et al., 7th ed., eq. 5.25).
 * `lossWPerK` = 1/R, 0 for a mass that gives no heat away. Infinity where it never gets there; 0 where it is there.
 */
export function timeToTemperature(
  heatCapacityJPerK: number,
  powerW: number,
  nowC: number,
  limitC: number,
  lossWPerK = 0,
  ambientC = 0,
): number {
  if (nowC >= limitC) return 0;
  if (lossWPerK === 0) return powerW > 0 ? (heatCapacityJPerK * (limitC - nowC)) / powerW : Infinity;
  const end = ambientC + powerW / lossWPerK;
  if (limitC >= end) return Infinity;
  return (-heatCapacityJPerK / lossWPerK) * Math.log((limitC - end) / (nowC - end));
}

/** Where it ends: T_amb + P R. */
export const steadyTemperature = (ambientC: number, powerW: number, resistanceKPerW: number): number =>
  ambientC + powerW * resistanceKPerW;
