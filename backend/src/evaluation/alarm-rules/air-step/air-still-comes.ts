import { keep, recall, usable, type UnitContext } from '../judge-context';
import { Verdict } from '../verdict';
import { branchStillShowsAir } from './branch-alone';
import { AirSignal } from './air-memory';
import { oldEnd, stepWindowTicks } from '../step';

/** Remembers what the signals were before the step, once, as the alarm is about to be raised. */
export function rememberBefore(context: UnitContext): void {
  const { air, unitIndex } = context;
  rememberStep(context);
  const first = air.firstSignal[unitIndex] as number;
  air.gasBefore[unitIndex] = oldEnd(air.rings, first + AirSignal.gasLoad);
  air.waterBefore[unitIndex] = oldEnd(air.rings, first + AirSignal.tankWater);
}

/** When the newest step was, and the gas load before it: that of a second opening counts on the first one's. */
export function rememberStep({ air, nowMs, unitIndex }: UnitContext): void {
  air.stepMs[unitIndex] = nowMs;
  air.gasBeforeNewest[unitIndex] = oldEnd(air.rings, (air.firstSignal[unitIndex] as number) + AirSignal.gasLoad);
}

/**
 * After the step: does the air still come? As long as the gas load stays above what it was by half of the limit.
 * Where gas load is not known at all, as long as the water that was pushed out has not gone back.
 * With alternating tanks gas load and water go up and down with each cycle: there the branches tell.
 * Where a restart lost what it was: a gas load above the limit itself counts; the water has to fall from the highest that was
 * seen since, by what the limit pushes out within the window of a step.
 * @param limit m³/s of free air
 */
export function airStillComes(context: UnitContext, limit: number): Verdict {
  const { air, slots, state, unit, unitIndex } = context;
  if (unit.shape === 'b') {
    const shows = branchStillShowsAir(context);
    return shows === null ? Verdict.hold : shows ? Verdict.yes : Verdict.no;
  }
  if (slots.gasLoad >= 0) {
    const gas = usable(state, slots.gasLoad);
    if (Number.isNaN(gas)) return Verdict.hold;
    const before = air.gasBefore[unitIndex] as number;
    return gas > (Number.isNaN(before) ? limit : before + limit / 2) ? Verdict.yes : Verdict.no;
  }
  const water = air.rings.at((air.firstSignal[unitIndex] as number) + AirSignal.tankWater, 0);
  if (Number.isNaN(water)) return Verdict.hold;
  const before = air.waterBefore[unitIndex] as number;
  if (Number.isNaN(before)) return hasFallen(context, water, limit * stepWindowTicks) ? Verdict.no : Verdict.hold;
  return water - before > (limit / 2) * stepWindowTicks ? Verdict.yes : Verdict.no;
}

const cell = { highest: 0 } as const;

function hasFallen(context: UnitContext, water: number, by: number): boolean {
  const highest = recall(context, cell.highest);
  if (!(water <= highest)) keep(context, cell.highest, water);
  return highest - water > by;
}
