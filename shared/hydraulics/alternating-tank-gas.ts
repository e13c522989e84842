import type { CubicMetrePerSecond, PascalAbsolute } from '../units/quantity';

/**
 * Gas that alternating tanks load onto their source by working, Pa m³/s: each litre of water that leaves under the
 * discharge pressure leaves a litre of gas that is drawn down to the fill pressure: q (p_discharge − p_fill), by the ideal gas law.
 */
export const alternatingTankGas = (
  flow: CubicMetrePerSecond,
  discharge: PascalAbsolute,
  fill: PascalAbsolute,
): number => flow * Math.max(0, discharge - fill);
