import type { PlantInputs } from './plant-inputs';
import type { VacuumParameters } from './plant-parameters';
import type { PlantState } from './plant-state';

/** Is the lead source turning by its own power? */
export function leadRuns(state: PlantState, { condition }: PlantInputs): boolean {
  return state.vacuumRunning && !condition.leadDead && !condition.powerLost;
}

/** Could the second source start? */
export function standbyAvailable(vacuum: VacuumParameters, { orders, condition }: PlantInputs): boolean {
  return vacuum.sources > 1 && orders.vacuumOn && !condition.standbyDead && !condition.powerLost;
}

/** The standby joins when the pressure stays too high, and takes the lead's place when that is dead. */
export function stepStandbySource(
  vacuum: VacuumParameters,
  state: PlantState,
  inputs: PlantInputs,
  error: number,
  wanted: number,
  dtS: number,
): void {
  if (vacuum.sources < 2) return;
  const available = standbyAvailable(vacuum, inputs);
  const called = available && (error > vacuum.standbyAbovePa || inputs.condition.leadDead);
  state.standbyAboveS = called ? state.standbyAboveS + dtS : 0;
  if (state.standbyAboveS >= vacuum.standbyDelayS) {
    state.standbyRunning = true;
    state.standbyRanS = 0;
  }
  if (state.standbyRunning) {
    state.standbyRanS += dtS;
    if (!available || (state.standbyRanS > vacuum.standbyLeastRunS && wanted < 0.4)) state.standbyRunning = false;
  }
  const rests = inputs.condition.leadDead && !state.vacuumRunning;
  const speed = state.standbyRunning && !rests ? Math.max(vacuum.lowestSpeed, wanted) : 0;
  state.standbySpeed = sourceRamp(state.standbySpeed, speed, vacuum.rampS, dtS);
}

/** Moves towards a speed no faster than 0 to 100 % in `rampS`. */
export function sourceRamp(speed: number, wanted: number, rampS: number, dtS: number): number {
  const reach = dtS / rampS;
  return speed + Math.min(reach, Math.max(-reach, wanted - speed));
}
