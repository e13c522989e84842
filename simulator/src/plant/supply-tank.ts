import { sonicShare } from './opening-flow';
import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { mixedC } from './cell';
import { supplyTankSetPa } from './set-points';
import { freeAirMolPerM3, gasConstant, gasSpacePressurePa } from './water';

/** How fast the regulator brings the tank's pressure back, s. */
const regulatorS = 0.7;
/** The bleed holds the set pressure; the relief opens so much above it, Pa. */
const reliefAbovePa = 300;
/** What the vent passes when it stands open, free air against the rated flow of water. */
const ventShareOfFlow = 0.75;
/** A relief that is limited gives this share. */
const limitedShare = 0.2;

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

/** Holds the set pressure: room air in when too low, gas to the separator when too high. Bleed and relief are two ways of one vent. */
export function regulateSupplyTank(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  dtS: number,
): SupplyTankGas {
  const { last } = state;
  const { vent } = inputs.condition;
  const gasM3 = supplyTankGasM3(parameters, state);
  const molPerPa = gasM3 / (gasConstant * (state.supplyTankC + 273.15));
  const error = last.supplyTankPa + inputs.measuredOffset.supplyTankPa - supplyTankSetPa(inputs);
  const most = ventShareOfFlow * parameters.ratedFlowM3PerS * freeAirMolPerM3;
  const gain = molPerPa / (regulatorS + dtS);
  const wantedIn = inputs.ambientPa > last.supplyTankPa ? Math.min(most, Math.max(0, -error * gain)) : 0;
  const wantedOut =
    last.supplyTankPa > last.separatorPa ? Math.min(most, Math.max(0, (error - reliefAbovePa) * gain)) : 0;
  const openMol = most * sonicShare(last.supplyTankPa, inputs.ambientPa);
  const bleedMolPerS = vent === 'stuckOpen' ? openMol : bleedShut(inputs) ? 0 : wantedIn;
  const reliefMolPerS = wantedOut * reliefShare(vent);
  state.ventCommand = Math.max(wantedIn, wantedOut) / most;
  state.ventPosition = vent === 'stuckOpen' ? 1 : Math.max(bleedMolPerS, reliefMolPerS) / most;
  state.supplyTankGasMol += (bleedMolPerS - reliefMolPerS) * dtS;
  state.sums.gasInMol += bleedMolPerS * dtS;
  return { bleedMolPerS, reliefMolPerS };
}

function bleedShut({ condition }: PlantInputs): boolean {
  return condition.vent === 'stuckShut' || (condition.powerLost && condition.bleedFailsShut);
}

function reliefShare(vent: PlantInputs['condition']['vent']): number {
  if (vent === 'good') return 1;
  return vent === 'limited' ? limitedShare : 0;
}

export function supplyTankGasM3(parameters: PlantParameters, state: PlantState): number {
  const { supplyTankWater, supplyTankGas } = parameters.volumeM3;
  return Math.max(0.02 * supplyTankGas, supplyTankGas + supplyTankWater - state.supplyTankWaterM3);
}

export function supplyTankPressurePa(parameters: PlantParameters, state: PlantState): number {
  return gasSpacePressurePa(state.supplyTankGasMol, supplyTankGasM3(parameters, state), state.supplyTankC);
}
