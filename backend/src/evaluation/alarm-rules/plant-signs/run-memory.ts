import { usable, type UnitContext } from '../judge-context';

/** When machines of a unit stopped and when their standby last ran; tick time, NaN where it was not seen. */
export interface RunMemory {
  readonly pumpStoppedMs: Float64Array;
  readonly vacuumStoppedMs: Float64Array;
  readonly pumpWasRunning: Uint8Array;
  readonly vacuumWasRunning: Uint8Array;
  /** Separator pressure when the vacuum source stopped, Pa. */
  readonly pressureAtStop: Float64Array;
  /** When the standby was last seen to run, or since when it is watched. */
  readonly pumpStandbyProvedMs: Float64Array;
  readonly vacuumStandbyProvedMs: Float64Array;
}

export function createRunMemory(units: number): RunMemory {
  const never = (): Float64Array => new Float64Array(units).fill(Number.NaN);
  return {
    pumpStoppedMs: never(),
    vacuumStoppedMs: never(),
    pumpWasRunning: new Uint8Array(units),
    vacuumWasRunning: new Uint8Array(units),
    pressureAtStop: never(),
    pumpStandbyProvedMs: never(),
    vacuumStandbyProvedMs: never(),
  };
}

/** Once a second, before the rules. */
export function sampleRuns(context: UnitContext): void {
  const { nowMs, plant, slots, state, unitIndex } = context;
  const { runs } = plant;
  follow(usable(state, slots.pumpRunning), runs.pumpWasRunning, runs.pumpStoppedMs, unitIndex, nowMs);
  follow(usable(state, slots.vacuumRunning), runs.vacuumWasRunning, runs.vacuumStoppedMs, unitIndex, nowMs);
  if (runs.vacuumStoppedMs[unitIndex] === nowMs)
    runs.pressureAtStop[unitIndex] = usable(state, slots.separatorPressure);
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
  if (running >= 0.5 || (running < 0.5 && Number.isNaN(provedMs[unit] as number))) provedMs[unit] = nowMs;
}
