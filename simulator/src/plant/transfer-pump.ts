import type { PlantInputs } from './plant-inputs';
import type { PlantParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { saturationPressurePa } from './vapour-pressure';
import { headPaPerM, waterHeatJPerM3K } from './water';

/** How fast the level controller brings the supply tank back, s; and its slower integral. */
const levelTimeS = 8;
const levelIntegralS = 60;
const lowestSpeed = 0.3;
/** The water of the transfer line takes so long to speed up or slow down, s. */
const lineInertiaS = 0.5;
/** Share of pump power that ends in the water; the rest leaves by the motor. Common practice. */
const heatShare = 0.85;

/** From rest to full speed, and from full speed to rest when it trips or is stopped, s. */
const startS = 3;
const coastS = 1;

/** Is the pump turning by its own power? */
export const pumpRuns = ({ orders, condition }: PlantInputs): boolean =>
  orders.pumpOn && !condition.pumpTripped && !condition.powerLost;

/** Pump speed by the supply tank's level, then the flow at which the pump's curve meets the line. */
export function stepTransferPump(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  dtS: number,
): void {
  if (pumpRuns(inputs)) controlLevel(parameters, state, inputs, dtS);
  else state.pumpSpeed = Math.max(0, state.pumpSpeed - dtS / coastS);
  const { pump, lossPa, elevationM, volumeM3, ratedFlowM3PerS: rated } = parameters;
  const { last } = state;
  const separatorSurface =
    elevationM.separatorSurface + (state.separatorWaterM3 - volumeM3.separatorWater) / volumeM3.separatorAreaM2;
  const staticM = (last.supplyTankPa - last.separatorPa) / headPaPerM + elevationM.delivery - separatorSurface;
  const lineM =
    (lossPa.pumpSuction + lossPa.filter * state.filterLoad * inputs.condition.filterShare + lossPa.transferRest) /
    headPaPerM;
  const room = pump.shutOffM * inputs.condition.pumpHeadShare * state.pumpSpeed ** 2 - staticM;
  const free = room > 0 ? rated * Math.sqrt(room / (pump.fallM + lineM)) : 0;
  const suctionLossPa = lossPa.pumpSuction * (last.transferM3PerS / rated) ** 2;
  last.pumpInletPa = last.separatorPa + (separatorSurface - elevationM.pumpEye) * headPaPerM - suctionLossPa;
  last.suctionHeadM = (last.pumpInletPa - saturationPressurePa(state.separatorC)) / headPaPerM;
  const carried =
    free *
    cavitationShare(pump.requiredSuctionHeadM, last.suctionHeadM) *
    stockShare(parameters, state) *
    roomShare(parameters, state);
  last.transferM3PerS += ((carried - last.transferM3PerS) * dtS) / (lineInertiaS + dtS);
}

/** The pump holds its flow down to the required suction head, then loses it over the next half metre. */
function cavitationShare(requiredM: number, availableM: number): number {
  return Math.min(1, Math.max(0, (availableM - requiredM + 0.5) / 0.5));
}

/** The last tenth of the separator's water runs out slower and slower. */
function stockShare(parameters: PlantParameters, state: PlantState): number {
  return Math.min(1, Math.max(0, state.separatorWaterM3 / (0.1 * parameters.volumeM3.separatorWater)));
}

/** A supply tank with no room left takes no more. */
function roomShare({ volumeM3 }: PlantParameters, state: PlantState): number {
  const whole = volumeM3.supplyTankWater + volumeM3.supplyTankGas;
  return Math.min(1, Math.max(0, (0.97 * whole - state.supplyTankWaterM3) / (0.05 * whole)));
}

function controlLevel(parameters: PlantParameters, state: PlantState, inputs: PlantInputs, dtS: number): void {
  const { volumeM3, ratedFlowM3PerS } = parameters;
  const sensedM3 = state.supplyTankWaterM3 + inputs.measuredOffset.supplyLevelM * volumeM3.supplyTankAreaM2;
  const missing = (volumeM3.supplyTankWater - sensedM3) / ratedFlowM3PerS;
  // near its duty the flow changes by about 1.7 times the speed's share
  const gain = 1 / (1.7 * levelTimeS);
  const wanted = 0.947 + gain * missing + state.levelIntegral;
  const held = Math.min(1, Math.max(lowestSpeed, wanted));
  state.pumpSpeed = Math.min(held, state.pumpSpeed + dtS / startS);
  if (wanted === state.pumpSpeed) state.levelIntegral += (gain * missing * dtS) / levelIntegralS;
}

/** Pressure behind the pump: the tank, the lift and the line ahead of it, Pa. */
export function pumpDischargePa(parameters: PlantParameters, state: PlantState, inputs: PlantInputs): number {
  const { elevationM, lossPa, ratedFlowM3PerS } = parameters;
  const lineFactor = lossPa.filter * state.filterLoad * inputs.condition.filterShare + lossPa.transferRest;
  const liftPa = (elevationM.delivery - elevationM.pumpEye) * headPaPerM;
  return state.last.supplyTankPa + liftPa + lineFactor * (state.last.transferM3PerS / ratedFlowM3PerS) ** 2;
}

/** Electrical power at the present speed, W. */
export function pumpPowerW(parameters: PlantParameters, state: PlantState): number {
  return parameters.pump.powerW * (state.pumpSpeed / 0.947) ** 3;
}

/** Warming of the water by the pump, K·m³ in a step. */
export function pumpHeatKM3(parameters: PlantParameters, state: PlantState, dtS: number): number {
  const heatJ = heatShare * pumpPowerW(parameters, state) * dtS;
  state.sums.pumpHeatJ += heatJ;
  return heatJ / waterHeatJPerM3K;
}
