import type { PlantInputs } from '../plant-inputs';
import type { PlantParameters } from '../plant-parameters';
import type { PlantState } from '../plant-state';
import { supplyTankSetPa } from '../set-points';
import { pumpRuns } from '../transfer-pump';
import { saturationPressurePa } from '../vapour-pressure';
import { headPaPerM } from '../water';

/** Of full speed per Pa of the header's pressure, and the time of the integral, s. */
const gainPerPa = 2e-6;
const integralS = 6;
const usualSpeed = 0.9;
const lowestSpeed = 0.2;
const startS = 3;
const coastS = 1;
const lineInertiaS = 0.5;

/** The pump from the reservoir into the header: its speed holds the header's pressure, so slowing it lowers the whole supply side. */
export function stepLoopPump(parameters: PlantParameters, state: PlantState, inputs: PlantInputs, dtS: number): void {
  if (pumpRuns(inputs)) controlPressure(state, inputs, dtS);
  else state.pumpSpeed = Math.max(0, state.pumpSpeed - dtS / coastS);
  const { pump, lossPa, elevationM, volumeM3, ratedFlowM3PerS: rated } = parameters;
  const { last } = state;
  const surfaceM =
    elevationM.separatorSurface + (state.separatorWaterM3 - volumeM3.separatorWater) / volumeM3.separatorAreaM2;
  const filterPa = lossPa.filter * state.filterLoad * inputs.condition.filterShare;
  const lineM = (lossPa.pumpSuction + filterPa + lossPa.transferRest) / headPaPerM;
  const staticM = (last.supplyTankPa - last.separatorPa) / headPaPerM + elevationM.delivery - surfaceM;
  const room = pump.shutOffM * inputs.condition.pumpHeadShare * state.pumpSpeed ** 2 - staticM;
  const free = room > 0 ? rated * Math.sqrt(room / (pump.fallM + lineM)) : 0;
  const suctionLossPa = lossPa.pumpSuction * (last.transferM3PerS / rated) ** 2;
  last.pumpInletPa = last.separatorPa + (surfaceM - elevationM.pumpEye) * headPaPerM - suctionLossPa;
  last.suctionHeadM = (last.pumpInletPa - saturationPressurePa(state.separatorC)) / headPaPerM;
  const wet = Math.min(1, Math.max(0, (last.suctionHeadM - pump.requiredSuctionHeadM + 0.5) / 0.5));
  const stock = Math.min(1, Math.max(0, state.separatorWaterM3 / (0.1 * volumeM3.separatorWater)));
  last.transferM3PerS += ((free * wet * stock - last.transferM3PerS) * dtS) / (lineInertiaS + dtS);
}

function controlPressure(state: PlantState, inputs: PlantInputs, dtS: number): void {
  const missingPa = supplyTankSetPa(inputs) - state.last.supplyTankPa - inputs.measuredOffset.supplyTankPa;
  const wanted = usualSpeed + gainPerPa * missingPa + state.levelIntegral;
  const held = Math.min(1, Math.max(lowestSpeed, wanted));
  state.pumpSpeed = Math.min(held, state.pumpSpeed + dtS / startS);
  if (wanted === state.pumpSpeed) state.levelIntegral += (gainPerPa * missingPa * dtS) / integralS;
}
