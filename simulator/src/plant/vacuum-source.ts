import type { PlantParameters, VacuumParameters } from './plant-parameters';
import type { PlantState } from './plant-state';
import { saturationPressurePa } from './vapour-pressure';
import { gasConstant } from './water';

/** Of full speed per Pa, and the time of the integral, s. */
const gainPerPa = 2e-4;
const integralS = 20;

/** Dry gas that one source moves at full speed, mol/s: a liquid-ring pump with cold seal water, own shape of its curve. */
export function sourceCapacityMolPerS(vacuum: VacuumParameters, separatorPa: number, separatorC: number): number {
  const blank = saturationPressurePa(vacuum.sealC) + 1000;
  if (separatorPa <= blank) return 0;
  const swept = vacuum.sweptM3PerS * (1 - (blank / separatorPa) ** 1.5);
  const vapourPa = saturationPressurePa(separatorC - vacuum.suctionCoolingK);
  return (swept * Math.max(0, separatorPa - vapourPa)) / (gasConstant * (vacuum.sealC + 273.15));
}

/**
 * Holds the separator's set pressure by speed. `startStop` runs between the edges of its band;
 * `continuous` never stops and recirculates what its lowest speed moves too much. The standby joins when the
 * pressure stays high.
 * @returns dry gas to the exhaust, mol/s.
 */
export function stepVacuumSource(parameters: PlantParameters, state: PlantState, dtS: number): number {
  const { vacuum, set } = parameters;
  const pressure = state.last.separatorPa;
  const error = pressure - set.separatorPa;
  const sinceSwitchS = vacuum.control === 'continuous' ? 0 : startOrStop(state, error, set.separatorBandPa, dtS);

  const wanted = state.vacuumRunning ? demand(state, error, dtS) : 0;
  const atLeast = state.vacuumRunning ? vacuum.lowestSpeed : 0;
  state.vacuumSpeed = ramp(state.vacuumSpeed, Math.max(atLeast, wanted), vacuum.rampS, dtS + sinceSwitchS);
  stepStandby(vacuum, state, error, wanted, dtS);

  const capacity = sourceCapacityMolPerS(vacuum, pressure, state.separatorC);
  const passed = vacuum.control === 'continuous' ? Math.min(1, wanted / state.vacuumSpeed) : 1;
  state.last.exhaustMolPerS = capacity * (state.vacuumSpeed * passed + state.standbySpeed);
  return state.last.exhaustMolPerS;
}

/** The bleed opens at half the band below the set point, and brings the pressure back there in so long, s. */
const bleedS = 2;

/**
 * Room air that a `continuous` source lets in, mol/s: it holds the pressure while water leaves the
 * separator to fill the pipes after a cut was mended. One with start and stop only waits.
 */
export function vacuumBleedMolPerS(parameters: PlantParameters, state: PlantState, gasM3: number): number {
  const { vacuum, set } = parameters;
  const missingPa = set.separatorPa - set.separatorBandPa / 2 - state.last.separatorPa;
  if (vacuum.control !== 'continuous' || missingPa <= 0) return 0;
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

function stepStandby(vacuum: VacuumParameters, state: PlantState, error: number, wanted: number, dtS: number): void {
  if (vacuum.sources < 2) return;
  state.standbyAboveS = error > vacuum.standbyAbovePa ? state.standbyAboveS + dtS : 0;
  if (state.standbyAboveS >= vacuum.standbyDelayS) {
    state.standbyRunning = true;
    state.standbyRanS = 0;
  }
  if (state.standbyRunning) {
    state.standbyRanS += dtS;
    if (state.standbyRanS > vacuum.standbyLeastRunS && wanted < 0.4) state.standbyRunning = false;
  }
  state.standbySpeed = ramp(
    state.standbySpeed,
    state.standbyRunning ? Math.max(vacuum.lowestSpeed, wanted) : 0,
    vacuum.rampS,
    dtS,
  );
}

/** Moves towards a speed no faster than 0 to 100 % in `rampS`. */
function ramp(speed: number, wanted: number, rampS: number, dtS: number): number {
  const reach = dtS / rampS;
  return speed + Math.min(reach, Math.max(-reach, wanted - speed));
}
