import { usable, type UnitContext } from '../judge-context';
import { powerLost } from './power-lost';

/** Once a second, before the rules. */
export function sampleRuns(context: UnitContext): void {
  const { nowMs, plant, slots, state, unitIndex } = context;
  const { runs } = plant;
  follow(usable(state, slots.pumpRunning), runs.pumpWasRunning, runs.pumpStoppedMs, unitIndex, nowMs);
  follow(usable(state, slots.vacuumRunning), runs.vacuumWasRunning, runs.vacuumStoppedMs, unitIndex, nowMs);
  if (runs.vacuumStoppedMs[unitIndex] === nowMs)
    runs.pressureAtStop[unitIndex] = usable(state, slots.separatorPressure);
  if (powerLost(context)) runs.powerLostMs[unitIndex] = nowMs;
  prove(usable(state, slots.pumpStandbyRunning), runs.pumpStandbyProvedMs, unitIndex, nowMs);
  prove(usable(state, slots.vacuumStandbyRunning), runs.vacuumStandbyProvedMs, unitIndex, nowMs);
}

function follow(running: number, was: Uint8Array, stoppedMs: Float64Array, unit: number, nowMs: number): void {
  if (running >= 0.5) {
    was[unit] = 1;
    stoppedMs[unit] = Number.NaN;
  } else if (running < 0.5 && was[unit] === 1) {
    was[unit] = 0;
    stoppedMs[unit] = nowMs;
  }
}

/** A standby counts as proved from the first look on: nothing is known of the time before. */
function prove(running: number, provedMs: Float64Array, unit: number, nowMs: number): void {
  if (running >= 0.5 || (running < 0.5 && Number.isNaN(provedMs[unit]))) provedMs[unit] = nowMs;
}
