import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { mixedC } from './cell';
import { freeAirMolPerM3, gasConstant, gasSpacePressurePa } from './water';

/** How fast the regulator brings the tank's pressure back, s. */
const regulatorS = 0.7;
/** The bleed holds the set pressure; the relief opens so much above it, Pa. */
const reliefAbovePa = 300;

/** Gas between the supply tank and its neighbours, mol/s. */
export interface SupplyTankGas {
  /** Room air by the bleed. */
  bleedMolPerS: number;
  /** To the separator by the relief line. */
  reliefMolPerS: number;
}

/** Water in by the transfer line, out by the loop, all at the tank's new temperature. */
export function stepSupplyTankWater(state: PlantState, inC: number, dtS: number): void {
  const inM3 = state.last.transferM3PerS * dtS;
  state.supplyTankC = mixedC(state.supplyTankWaterM3, state.supplyTankC, inM3, inC);
  state.supplyTankWaterM3 += inM3 - state.last.loopFlowM3PerS * dtS;
}

/** Holds the set pressure: room air in when too low, gas to the separator when too high. */
export function regulateSupplyTank(
  parameters: PlantParameters,
  state: PlantState,
  ambientPa: number,
  dtS: number,
): SupplyTankGas {
  const gasM3 = supplyTankGasM3(parameters, state);
  const molPerPa = gasM3 / (gasConstant * (state.supplyTankC + 273.15));
  const error = state.last.supplyTankPa - parameters.set.supplyTankPa;
  const most = 0.75 * parameters.ratedFlowM3PerS * freeAirMolPerM3;
  const gain = molPerPa / (regulatorS + dtS);
  const bleed = ambientPa > state.last.supplyTankPa ? Math.min(most, Math.max(0, -error * gain)) : 0;
  const relief =
    state.last.supplyTankPa > state.last.separatorPa ? Math.min(most, Math.max(0, (error - reliefAbovePa) * gain)) : 0;
  state.supplyTankGasMol += (bleed - relief) * dtS;
  state.sums.gasInMol += bleed * dtS;
  return { bleedMolPerS: bleed, reliefMolPerS: relief };
}

export function supplyTankGasM3(parameters: PlantParameters, state: PlantState): number {
  const { supplyTankWater, supplyTankGas } = parameters.volumeM3;
  return Math.max(0.02 * supplyTankGas, supplyTankGas + supplyTankWater - state.supplyTankWaterM3);
}

export function supplyTankPressurePa(parameters: PlantParameters, state: PlantState): number {
  return gasSpacePressurePa(state.supplyTankGasMol, supplyTankGasM3(parameters, state), state.supplyTankC);
}
