import type { PlantInputs } from './plant-inputs';
import type { PlantParameters, VacuumParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { sonicShare } from './opening-flow';
import { separatorSetPa } from './set-points';
import { leadRuns, stepStandbySource, sourceRamp } from './standby-source';
import { saturationPressurePa } from './vapour-pressure';
import { freeAirMolPerM3, gasConstant } from './water';

/** Of full speed per Pa, and the time of the integral, s. */
const gainPerPa = 2e-4;
const integralS = 20;
/** Capacity that a trap full of water takes, and water carried over from a full separator. Estimates. */
const trapTakes = 0.8;
const carryOverTakes = 0.5;
/** More power for a source that moves water. An estimate. */
const trapWeighs = 0.25;

/** Dry gas that one source moves at full speed, mol/s: a liquid-ring pump with cold seal water, own shape of its curve. */
export function sourceCapacityMolPerS(
  vacuum: VacuumParameters,
  separatorPa: number,
  separatorC: number,
  sealC = vacuum.sealC,
): number {
  const blank = saturationPressurePa(sealC) + 1000;
  if (separatorPa <= blank) return 0;
  const swept = vacuum.sweptM3PerS * (1 - (blank / separatorPa) ** 1.5);
  const vapourPa = saturationPressurePa(separatorC - vacuum.suctionCoolingK);
  return (swept * Math.max(0, separatorPa - vapourPa)) / (gasConstant * (sealC + 273.15));
}

/**
 * Holds the separator's set pressure by speed. `startStop` runs between the edges of its band;
 * `continuous` never stops and recirculates what its lowest speed moves too much. The standby joins when the
 * pressure stays high or the lead is dead. Air that comes back through a resting source's check valve never reaches
 * the exhaust's meter.
 * @returns dry gas that leaves the separator, mol/s; below zero where room air comes in by a leaking check valve.
 */
export function stepVacuumSource(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  dtS: number,
): number {
  const { vacuum, set } = parameters;
  const pressure = state.last.separatorPa;
  const error = pressure + inputs.measuredOffset.separatorPa - separatorSetPa(inputs);
  const continuous = vacuum.control === 'continuous';
  let sinceSwitchS = 0;
  if (continuous || !inputs.orders.vacuumOn) state.vacuumRunning = inputs.orders.vacuumOn;
  else if (!inputs.condition.powerLost) sinceSwitchS = startOrStop(state, error, set.separatorBandPa, dtS);

  const asked = state.vacuumRunning && !inputs.condition.powerLost;
  const wanted = asked ? demand(state, error, dtS) : 0;
  const leadSpeed = leadRuns(state, inputs) ? Math.max(vacuum.lowestSpeed, wanted) : 0;
  state.vacuumSpeed = sourceRamp(state.vacuumSpeed, leadSpeed, vacuum.rampS, dtS + sinceSwitchS);
  stepStandbySource(vacuum, state, inputs, error, wanted, dtS);

  const passed = (speed: number): number => (continuous && speed > 0 ? Math.min(1, wanted / speed) : 1);
  const alone = inputs.condition.leadDead ? passed(state.standbySpeed) : 1;
  const moved = state.vacuumSpeed * passed(state.vacuumSpeed) + state.standbySpeed * alone;
  const back = inputs.condition.standbyCheckFreeM3PerS * freeAirMolPerM3 * sonicShare(pressure, inputs.ambientPa);
  const out = moved * capacityMolPerS(vacuum, state, inputs) - (oneRests(vacuum, state) ? back : 0);
  state.last.exhaustMolPerS = Math.max(0, out);
  return out;
}

/** Only the check valve of a source that rests can let air back. */
function oneRests({ sources }: VacuumParameters, state: PlantState): boolean {
  return sources > 1 ? state.standbySpeed === 0 || state.vacuumSpeed === 0 : state.vacuumSpeed === 0;
}

function capacityMolPerS(vacuum: VacuumParameters, state: PlantState, { condition }: PlantInputs): number {
  const sealC = vacuum.sealC + condition.sealWarmerK;
  const whole = sourceCapacityMolPerS(vacuum, state.last.separatorPa, state.separatorC, sealC);
  const wet = state.last.carriedOverM3PerS > 0 ? carryOverTakes : 0;
  return whole * condition.vacuumShare * (1 - Math.max(wet, trapTakes * condition.trapFilledShare));
}

/** Electrical power of all sources, W. A source with its power gone only coasts; water in the trap makes it heavier. */
export function vacuumPowerW({ vacuum }: PlantParameters, state: PlantState, { condition }: PlantInputs): number {
  if (condition.powerLost) return 0;
  const lead = condition.leadDead ? 0 : state.vacuumSpeed;
  return vacuum.powerW * (lead + state.standbySpeed) * (1 + trapWeighs * condition.trapFilledShare);
}

/** The bleed opens at half the band below the set point, and brings the pressure back there in so long, s. */
const bleedS = 2;

/**
 * Room air that a `continuous` source lets in, mol/s: it holds the pressure while water leaves the
 * separator to fill the pipes after a cut was mended. One with start and stop only waits.
 */
export function vacuumBleedMolPerS(
  parameters: PlantParameters,
  state: PlantState,
  inputs: PlantInputs,
  gasM3: number,
): number {
  const { vacuum, set } = parameters;
  if (vacuum.control !== 'continuous' || !leadRuns(state, inputs)) return 0;
  const missingPa =
    separatorSetPa(inputs) - set.separatorBandPa / 2 - state.last.separatorPa - inputs.measuredOffset.separatorPa;
  if (missingPa <= 0) return 0;
  const molPerPa = gasM3 / (gasConstant * (state.separatorC + 273.15));
  return (missingPa * molPerPa) / bleedS;
}

function demand(state: PlantState, error: number, dtS: number): number {
  const wanted = gainPerPa * error + state.vacuumIntegral;
  const held = Math.min(1, Math.max(0, wanted));
  if (held === wanted || wanted * error < 0) state.vacuumIntegral += (gainPerPa * error * dtS) / integralS;
  state.vacuumIntegral = Math.min(1, Math.max(0, state.vacuumIntegral));
  return held;
}

/**
 * Starts at the upper edge of the band and stops at the lower one.
 * @returns how long before this step the edge was crossed, s: the ramp began there, whatever the step.
 */
function startOrStop(state: PlantState, error: number, bandPa: number, dtS: number): number {
  const before = state.separatorErrorPa;
  state.separatorErrorPa = error;
  const edge = state.vacuumRunning ? -bandPa : bandPa;
  if (state.vacuumRunning ? error >= edge : error <= edge) return 0;
  state.vacuumRunning = !state.vacuumRunning;
  state.vacuumIntegral = 0;
  return error === before ? 0 : dtS * Math.min(1, Math.abs((error - edge) / (error - before)));
}
