import { freeAirOfThroughput } from '@ebbline/shared/hydraulics/free-air';
import { suctionAt, suctionThroughput } from '@ebbline/shared/hydraulics/vacuum-suction';
import { celsius, cubicMetrePerSecond, pascalAbsolute } from '@ebbline/shared/units/quantity';
import { unitPlan } from '../../derive/unit-plan';
import { usable, type UnitContext } from '../judge-context';
import { oldEnd, slopeChange, stepOf, stepWindowTicks } from '../step';
import { AirSignal } from './air-memory';

/** A step counts by what it exceeds of so many deviations of the difference of its two ends. */
const noiseDeviations = 4;
/** Deviation of (mean of two) − (mean of three), in deviations of one sample. */
const endsFactor = Math.sqrt(1 / 2 + 1 / 3);
/** A fall of the separator pressure by more means that the source draws it down, not that air comes in: Pa. */
const drawnDownPa = 100;
/** So does a slope that has fallen by more, where the pressure was rising before the source started: Pa/s. */
const caughtPaPerS = 50;
/** A rise by more is a sign of air of its own, whatever the flow does: Pa. */
const pushedUpPa = 1000;
/**
 * Gas room of separator and receiver, as seconds of rated flow: no site file states it; common practice is 60 to 120,
 * no source, and the larger one tells vapour from air on the safe side of a false alarm.
 */
const gasRoomS = 120;
/** Pipes fill or run empty, and the levels with them, so long after the flow has started or stopped: own rule. */
const settlingMs = 30_000;
/** Gas temperature where the return's is not known, °C. Free air changes by 3 % for 10 K. */
const gasTemperatureC = 40;

/**
 * The greatest air entry that one of the signals stands for, m³/s of free air: what moved within five seconds, less
 * the noise. NaN where no signal can be judged. Common practice has no figure for this: the physics is ideal gas.
 *
 * - gas load, and vacuum speed × suction curve: only while the separator pressure is not being drawn down, and has not
 *   begun to rise less. A start of the source, and a lowered set point, do that; air does not.
 *   Less what vapour pushes out: a return that warms takes room from the dry gas (Dalton), and no air has come in.
 *   Less what water pushes out that only moves from tank to tank; and not while much of it does, as when the pump between
 *   them stands. What has come in is never more than the gas load there is now: one that was below zero, as a pressure that was
 *   drawn down makes it, only comes back.
 * - tank water: air that entered at the separator's pressure has pushed as much water out of the pipes. Not while flow
 *   starts or stops, nor while pipes fill or run empty after it, unless the separator pressure jumps: then it is no stop.
 * - return less supply flow: the same surge, as a flow.
 */
export function airWorth(context: UnitContext): number {
  const first = context.air.firstSignal[context.unitIndex] as number;
  const pressure = context.air.rings.at(first + AirSignal.separatorPressure, 0);
  const pressureStep = stepOf(context.air.rings, first + AirSignal.separatorPressure);
  const moved = waterBetweenTanks(context, first);
  let worth = Number.NaN;
  if (
    !gasGoesWithWater(context, first, moved) &&
    pressureStep >= -drawnDownPa &&
    slopeChange(context.air.rings, first + AirSignal.separatorPressure) >= -caughtPaPerS
  ) {
    const byLoad = gasStep(context, first + AirSignal.gasLoad);
    const bySpeed = speedWorth(context, first, pressure);
    // Nearly always nothing has risen: then there is nothing to take from it.
    const rises = byLoad > 0 || bySpeed > 0;
    const displaced = rises ? displacedByVapour(context, first) + displacedByWater(context, moved, pressure) : 0;
    worth = greater(worth, byLoad - displaced);
    worth = greater(worth, bySpeed - displaced);
  }
  if (!levelsAreMoving(context, first) || pressureStep > pushedUpPa) {
    const asFreeAir = freeAirOfThroughput(pressure, gasTemperature(context));
    const gained = Math.min(
      netStep(context, first + AirSignal.tankWater),
      stepOf(context.air.rings, first + AirSignal.loopWater),
    );
    worth = greater(worth, (gained / stepWindowTicks) * asFreeAir);
    worth = greater(worth, netStep(context, first + AirSignal.returnExcess) * asFreeAir);
  }
  return worth;
}

const greater = (known: number, other: number): number => (Number.isNaN(known) || other > known ? other : known);

/** Rise of a signal less its noise; ≤ 0 where it has not risen beyond it. */
const netStep = (context: UnitContext, signal: number): number =>
  stepOf(context.air.rings, signal) - noiseDeviations * endsFactor * context.air.noise.deviation(signal);

/** The rise of the gas load; it can't be more than what there is. */
const gasStep = (context: UnitContext, signal: number): number =>
  Math.min(netStep(context, signal), context.air.rings.at(signal, 0));

/** What the speed of the vacuum source has risen by, as free air; NaN without a curve. */
function speedWorth(context: UnitContext, first: number, pressurePa: number): number {
  if (context.unit.vacuumSource === null) return Number.NaN;
  const risen = netStep(context, first + AirSignal.vacuumSpeed);
  return risen > 0 ? risen * capacity(context, pressurePa) : risen;
}

/** Free air that one vacuum source carries at full speed now; NaN without a curve. */
function capacity(context: UnitContext, pressurePa: number): number {
  const source = context.unit.vacuumSource;
  if (source === null) return Number.NaN;
  const pressure = pascalAbsolute(pressurePa);
  const suction = cubicMetrePerSecond(suctionAt(source.pressurePa, source.suctionM3PerS, pressure));
  const gas = gasTemperature(context);
  const { fluid } = unitPlan(context.site, context.unitIndex);
  return freeAirOfThroughput(suctionThroughput(suction, pressure, fluid.vapourPressure(gas)), gas);
}

/**
 * Dry gas that leaves the separator because vapour takes its room, m³/s of free air: gas room × rise of the vapour
 * pressure. 0 where the return does not warm or is not known. The exhaust can't have risen by more for that reason.
 */
function displacedByVapour(context: UnitContext, first: number): number {
  const rise = stepOf(context.air.rings, first + AirSignal.vapourPressure) / stepWindowTicks;
  const gasRoomM3 = gasRoomS * context.unit.design.ratedFlowM3PerS;
  return rise > 0 ? freeAirOfThroughput(rise * gasRoomM3, gasTemperature(context)) : 0;
}

/**
 * Rise of the water in the separator that has come out of the supply tank, m³ within the window, < 0 where it goes back: what
 * all tanks together gain is no such water, air in the pipes has pushed it out. Where the supply tank's level is not known
 * all that rises counts, as long as the pump that empties the separator is said to stand.
 */
function waterBetweenTanks(context: UnitContext, first: number): number {
  const { rings } = context.air;
  const risen = stepOf(rings, first + AirSignal.separatorWater);
  const gained = stepOf(rings, first + AirSignal.loopWater);
  if (!Number.isNaN(gained)) return risen - Math.max(0, gained);
  return usable(context.state, context.slots.pumpRunning) >= 0.5 && !Number.isNaN(risen) ? 0 : risen;
}

/**
 * More than a quarter of the rated flow goes from tank to tank, or did a short while ago: the pump between them has
 * stopped or come back. The vacuum source follows what that pushes and draws, and its gas tells of no opening.
 * Where the levels are not known it may be so as long as the flow starts or stops, unless the separator pressure jumps.
 */
function gasGoesWithWater(context: UnitContext, first: number, movedM3: number): boolean {
  const { air, nowMs, unit, unitIndex } = context;
  if (Number.isNaN(movedM3) || Number.isNaN(stepOf(air.rings, first + AirSignal.loopWater))) {
    const jumps = stepOf(air.rings, first + AirSignal.separatorPressure) > pushedUpPa;
    return levelsAreMoving(context, first) && !jumps;
  }
  const much = 0.25 * unit.design.ratedFlowM3PerS * stepWindowTicks;
  // Water that goes back because the flow of the loop is lost is another matter: that does come with an opening.
  const pumpComesBack = movedM3 < -much && stepOf(air.rings, first + AirSignal.loopFlow) > 0;
  if (movedM3 > much || pumpComesBack) air.waterMovedMs[unitIndex] = nowMs;
  return nowMs - (air.waterMovedMs[unitIndex] as number) < settlingMs;
}

/** Gas that water pushes out of the separator at its pressure, m³/s of free air. */
const displacedByWater = (context: UnitContext, movedM3: number, pressurePa: number): number =>
  movedM3 > 0 ? (movedM3 / stepWindowTicks) * freeAirOfThroughput(pressurePa, gasTemperature(context)) : 0;

export function gasTemperature(context: UnitContext) {
  const measured = usable(context.state, context.slots.returnTemperature);
  return celsius(Number.isNaN(measured) ? gasTemperatureC : measured);
}

/** The flow starts or stops, or did a short while ago. */
function levelsAreMoving(context: UnitContext, first: number): boolean {
  const { flowMovedMs } = context.air;
  if (flowStartsOrStops(context, first)) flowMovedMs[context.unitIndex] = context.nowMs;
  return context.nowMs - (flowMovedMs[context.unitIndex] as number) < settlingMs;
}

/** Flow that starts from nearly nothing, or falls by a quarter, moves levels by itself. */
function flowStartsOrStops(context: UnitContext, first: number): boolean {
  const before = oldEnd(context.air.rings, first + AirSignal.loopFlow);
  const now = context.air.rings.mean(first + AirSignal.loopFlow, 0, 1);
  const rated = context.unit.design.ratedFlowM3PerS;
  return (before < 0.3 * rated && now > before + 0.1 * rated) || now < 0.75 * before;
}
