import { isActive, usable, type UnitContext } from '../judge-context';
import { powerLost } from './power-lost';

/** Once a second, before the rules. */
export function sampleRuns(context: UnitContext): void {
  const { nowMs, plant, slots, state, unitIndex } = context;
  const { runs } = plant;
  follow(usable(state, slots.pumpRunning), runs.pumpWasRunning, runs.pumpStoppedMs, unitIndex, nowMs);
  follow(usable(state, slots.vacuumRunning), runs.vacuumWasRunning, runs.vacuumStoppedMs, unitIndex, nowMs);
  if (usable(state, slots.pumpRunning) >= 0.5) followHeat(context);
  if (runs.vacuumStoppedMs[unitIndex] === nowMs)
    runs.pressureAtStop[unitIndex] = usable(state, slots.separatorPressure);
  if (powerLost(context)) runs.powerLostMs[unitIndex] = nowMs;
  prove(context, usable(state, slots.pumpStandbyRunning), runs.pumpStandbyProvedMs);
  prove(context, usable(state, slots.vacuumStandbyRunning), runs.vacuumStandbyProvedMs);
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

/** Share of the newest second: a mean of about ten. */
const heatShare = 0.1;

function followHeat({ plant: { runs }, slots, state, unitIndex }: UnitContext): void {
  const heat = usable(state, slots.returnTemperature) - usable(state, slots.supplyTemperature);
  const before = runs.heatInWaterK[unitIndex] as number;
  runs.heatInWaterK[unitIndex] = Number.isNaN(before) ? heat : before + (heat - before) * heatShare;
}

/**
 * A standby counts as proved from the first look on: nothing is known of the time before. Not where PUMP-2 stands from before a
 * restart: it was unproved then, and to have forgotten since when proves nothing.
 */
function prove(context: UnitContext, running: number, provedMs: Float64Array): void {
  const { nowMs, unitIndex } = context;
  const firstLook = running < 0.5 && Number.isNaN(provedMs[unitIndex]) && !isActive(context, 'PUMP-2');
  if (running >= 0.5 || firstLook) provedMs[unitIndex] = nowMs;
}
