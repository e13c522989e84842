import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import type { ReturnOutflow } from './mains';
import { takeFromSeparator } from './water-out';
import { saturationPressurePa } from './vapour-pressure';
import {
  evaporationJPerKg,
  gasSpacePressurePa,
  waterDensityKgPerM3,
  waterHeatJPerM3K,
  waterMolarMassKg,
} from './water';

/** Water in from the return main, out to the pump, and a little out as vapour with the exhaust. */
export function stepSeparatorWater(
  parameters: PlantParameters,
  state: PlantState,
  from: ReturnOutflow,
  dtS: number,
): void {
  const outM3 = state.last.transferM3PerS * dtS;
  const inM3 = from.waterM3PerS * dtS;
  const vapourKg = vapourKgPerS(state) * wettedShare(parameters, state) * dtS;
  const vapourM3 = vapourKg / waterDensityKgPerM3;
  const coldKM3 = (vapourKg * evaporationJPerKg) / waterHeatJPerM3K;
  const left = state.separatorWaterM3 + inM3 - outM3 - vapourM3;
  const before = state.separatorC;
  state.separatorC = (before * (state.separatorWaterM3 - outM3 - vapourM3) + from.waterC * inM3 - coldKM3) / left;
  state.separatorWaterM3 = left;
  state.sums.waterOutM3 += vapourM3;
  state.sums.exhaustHeatJ += (coldKM3 + vapourM3 * before) * waterHeatJPerM3K;
}

/** The last tenth of the water wets less and less of the separator: what leaves is no longer saturated. */
function wettedShare({ volumeM3 }: PlantParameters, state: PlantState): number {
  return Math.min(1, state.separatorWaterM3 / (0.1 * volumeM3.separatorWater));
}

/** Vapour that leaves with the exhaust: saturated gas over the separator's water (Dalton), kg/s. */
export function vapourKgPerS(state: PlantState): number {
  const vapourPa = saturationPressurePa(state.separatorC);
  const dryPa = Math.max(1000, state.last.separatorPa - vapourPa);
  return (state.last.exhaustMolPerS * waterMolarMassKg * vapourPa) / dryPa;
}

/** Shares of the separator's gas room that water has taken when the level switch speaks, and when water goes over into the vacuum line. */
const highShare = 0.2;
const fullShare = 0.35;
/** What stands too high goes over within, s. */
const carryOverS = 5;

export function levelIsHigh({ volumeM3 }: PlantParameters, state: PlantState): boolean {
  return state.separatorWaterM3 > volumeM3.separatorWater + highShare * volumeM3.separatorGas;
}

/** A separator that is too full gives water to the vacuum line. */
export function stepCarryOver(parameters: PlantParameters, state: PlantState, dtS: number): void {
  const { separatorWater, separatorGas } = parameters.volumeM3;
  const overM3 = state.separatorWaterM3 - separatorWater - fullShare * separatorGas;
  const outM3 = overM3 > 0 ? (overM3 * dtS) / (carryOverS + dtS) : 0;
  state.last.carriedOverM3PerS = outM3 / dtS;
  takeFromSeparator(parameters, state, outM3);
}

export function separatorGasM3(parameters: PlantParameters, state: PlantState): number {
  const { separatorWater, separatorGas } = parameters.volumeM3;
  return Math.max(0.02 * separatorGas, separatorGas + separatorWater - state.separatorWaterM3);
}

export function separatorPressurePa(parameters: PlantParameters, state: PlantState): number {
  return gasSpacePressurePa(state.separatorGasMol, separatorGasM3(parameters, state), state.separatorC);
}
