import { isActive, usable, type UnitContext } from '../judge-context';
import { startModes, stoppedModes } from '../modes-of-rules';
import { powerLost } from './power-lost';
import { stopWasMeant } from './pump-wanted';

/** Once a second, before the rules. */
export function sampleRuns(context: UnitContext): void {
  const { nowMs, plant, slots, state, unitIndex } = context;
  const { runs } = plant;
  follow(usable(state, slots.pumpRunning), runs.pumpWasRunning, runs.pumpStoppedMs, unitIndex, nowMs);
  follow(usable(state, slots.vacuumRunning), runs.vacuumWasRunning, runs.vacuumStoppedMs, unitIndex, nowMs);
  if (usable(state, slots.pumpRunning) >= 0.5) followHeat(context, runs.heatInWaterK);
  followLoop(context);
  if (runs.vacuumStoppedMs[unitIndex] === nowMs)
    runs.pressureAtStop[unitIndex] = usable(state, slots.separatorPressure);
  if (powerLost(context)) runs.powerLostMs[unitIndex] = nowMs;
  followMode(context);
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

/** The loop stands where neither pump runs. Where one stands and the other is not known, nothing is (a largest of NaN is NaN). */
function followLoop(context: UnitContext): void {
  const { nowMs, plant, slots, state, unitIndex } = context;
  const { runs } = plant;
  const lead = usable(state, slots.pumpRunning);
  const standby = slots.pumpStandbyRunning >= 0 ? usable(state, slots.pumpStandbyRunning) : 0;
  const carried = lead >= 0.5 || standby >= 0.5;
  follow(carried ? 1 : Math.max(lead, standby), runs.loopWasRunning, runs.loopStoppedMs, unitIndex, nowMs);
  if (!carried) return;
  followHeat(context, runs.loopHeatK);
  runs.standbyWasLast[unitIndex] = lead >= 0.5 ? 0 : 1;
}

function followMode(context: UnitContext): void {
  const { mode, modeTold, nowMs, plant, unitIndex } = context;
  const { runs } = plant;
  if (!modeTold || !startModes.includes(mode)) runs.startsSinceMs[unitIndex] = Number.NaN;
  else if (Number.isNaN(runs.startsSinceMs[unitIndex])) runs.startsSinceMs[unitIndex] = nowMs;
  const stands = stoppedModes.includes(mode) && stopWasMeant(context) === true;
  if (stands) {
    if (runs.stands[unitIndex] === 0) forgetFacility(plant, unitIndex);
    runs.stoodMs[unitIndex] = nowMs;
  }
  runs.stands[unitIndex] = stands ? 1 : 0;
}

/** With the loop the facility’s water is shut off as well: what flowed before a stop says nothing of the start after it. */
function forgetFacility(plant: UnitContext['plant'], unitIndex: number): void {
  plant.facilityFlow.forget(unitIndex);
  plant.facilityValve.forget(unitIndex);
  plant.facilityFlowOfDay.forget(unitIndex);
  plant.facilityValveOfDay.forget(unitIndex);
}

/** Share of the newest second: a mean of about ten. */
const heatShare = 0.1;

function followHeat({ slots, state, unitIndex }: UnitContext, heatK: Float64Array): void {
  const heat = usable(state, slots.returnTemperature) - usable(state, slots.supplyTemperature);
  const before = heatK[unitIndex] as number;
  heatK[unitIndex] = Number.isNaN(before) ? heat : before + (heat - before) * heatShare;
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
