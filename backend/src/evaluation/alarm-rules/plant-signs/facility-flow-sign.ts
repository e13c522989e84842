import { judgeBelow } from '../below';
import type { Limits } from '../entry';
import { keep, recall, usable, type Finding, type UnitContext } from '../judge-context';
import { Verdict } from '../verdict';
import { chipsLoaded } from './chips-loaded';

const cell = { flowBefore: 0, valveBefore: 1, position: 2, openingMs: 3 } as const;

/** A valve that is told to stand so far shut wants no flow. */
const shutShare = 0.1;
/** Where nothing is known of the flow before, it counts as lost below this share of what commissioning found. */
const lostOfCommissioned = 0.1;

/** A valve that opens lets through what its position does, not what its command asks: a stroke takes some 100 s. Common practice, no source. */
const openingShare = 0.02;
const openingMs = 10_000;
const strokeMs = 100_000;

/** What flowed before, and how far the valve stood open then. */
interface Before {
  readonly flow: number;
  readonly valve: number;
}

/**
 * Facility flow by its meter: lost where it is below `limit` times its own mean of the last ten minutes or of the last day, and the
 * valve has not been closed as much, nor is still on its way open. The mean of a day is for a flow that ebbs away within an hour or so, and is asked only where the
 * valve is known: without it less flow may be less load. What was before is kept while the flow is lost; where a restart took
 * it the alarm holds, until the flow is half of what commissioning found. A stop that was meant takes it too: in the start that follows
 * no flow is no loss until chips give off heat. Flow of a valve falls about with the square of its
 * lift, between linear and equal-percentage ones.
 */
export function judgeFacilityFlow(context: UnitContext, limits: Limits, active: boolean, finding: Finding): void {
  const { plant, slots, state, unitIndex } = context;
  const flow = usable(state, slots.facilityFlow);
  finding.value = flow;
  const command = usable(state, slots.valveCommand >= 0 ? slots.valveCommand : slots.valvePosition);
  const position = usable(state, slots.valvePosition);
  if (!active && isForgotten(context)) forgetBefore(context);
  const isOpening = opens(context, position);
  const reached = Number.isNaN(position) && !active ? openedByNow(context) : position;
  const valve = (isOpening || Number.isNaN(position)) && reached < command ? reached : command;
  if (valve < shutShare) {
    if (command < shutShare) keep(context, cell.openingMs, context.nowMs);
    forgetBefore(context);
    finding.verdict = Verdict.no;
    return;
  }
  const before = flowBefore(context, valve);
  const isLost = Number.isNaN(before.flow);
  const share = isLost && !active ? lostOfCommissioned : limits.limit;
  finding.limit =
    share *
    (isLost
      ? commissionedFlow(context) * closedFactor(valve, command)
      : before.flow * closedFactor(valve, before.valve));
  finding.verdict = judgeBelow(flow, finding.limit, limits.deadband * finding.limit, active);
  if (isLost && active) {
    if (finding.verdict === Verdict.yes) finding.verdict = Verdict.hold;
    return;
  }
  if (finding.verdict === Verdict.yes) {
    if (isLost && isStartedWithoutLoad(context)) {
      finding.verdict = Verdict.no;
      return;
    }
    if (Number.isNaN(recall(context, cell.flowBefore))) keep(context, cell.flowBefore, before.flow);
    if (Number.isNaN(recall(context, cell.valveBefore))) keep(context, cell.valveBefore, before.valve);
    return;
  }
  if (finding.verdict === Verdict.no && !active) forgetBefore(context);
  plant.facilityFlow.push(unitIndex, flow, context.nowMs);
  plant.facilityValve.push(unitIndex, valve, context.nowMs);
  plant.facilityFlowOfDay.push(unitIndex, flow, context.nowMs);
  plant.facilityValveOfDay.push(unitIndex, valve, context.nowMs);
}

/** The valve has opened by more than a little within some seconds, or was told to be shut that short a time ago. */
function opens(context: UnitContext, position: number): boolean {
  if (Number.isNaN(position)) return false;
  const moved = position - recall(context, cell.position);
  if (!(Math.abs(moved) <= openingShare)) {
    keep(context, cell.position, position);
    keep(context, cell.openingMs, moved > 0 ? context.nowMs : Number.NaN);
  }
  return context.nowMs - recall(context, cell.openingMs) < openingMs;
}

/** How far a valve whose position nobody tells can have come since it was told to be shut, or since the loop stood. */
function openedByNow(context: UnitContext): number {
  const shutMs = recall(context, cell.openingMs);
  const stoodMs = context.plant.runs.stoodMs[context.unitIndex] as number;
  const fromMs = stoodMs > shutMs || Number.isNaN(shutMs) ? stoodMs : shutMs;
  return (context.nowMs - fromMs) / strokeMs;
}

/** The means were given up with a stop, and what was kept of them goes too. */
const isForgotten = ({ plant, unitIndex }: UnitContext): boolean =>
  Number.isNaN(plant.facilityFlow.mean(unitIndex)) && Number.isNaN(plant.facilityFlowOfDay.mean(unitIndex));

/** Facility water comes after the loop’s flow, and load after both. */
const isStartedWithoutLoad = (context: UnitContext): boolean =>
  context.modeTold && context.mode === 'starting' && chipsLoaded(context) !== true;

/**
 * What is kept while the flow is lost; else the mean that asks for more at the present lift. `flow` NaN where nothing is known. One
 * object for all, written anew by each question.
 */
function flowBefore(context: UnitContext, valve: number): Before {
  const { plant, unitIndex } = context;
  const kept = recall(context, cell.flowBefore);
  if (!Number.isNaN(kept)) return put(kept, recall(context, cell.valveBefore));
  const flowOfMinutes = plant.facilityFlow.mean(unitIndex);
  const valveOfMinutes = plant.facilityValve.mean(unitIndex);
  const flowOfDay = plant.facilityFlowOfDay.mean(unitIndex);
  const valveOfDay = plant.facilityValveOfDay.mean(unitIndex);
  if (Number.isNaN(flowOfDay + valveOfDay + valve)) return put(flowOfMinutes, valveOfMinutes);
  if (Number.isNaN(flowOfMinutes)) return put(flowOfDay, valveOfDay);
  const dayAsksMore = flowOfDay * closedFactor(valve, valveOfDay) > flowOfMinutes * closedFactor(valve, valveOfMinutes);
  return dayAsksMore ? put(flowOfDay, valveOfDay) : put(flowOfMinutes, valveOfMinutes);
}

const found: { -readonly [K in keyof Before]: Before[K] } = { flow: Number.NaN, valve: Number.NaN };

function put(flow: number, valve: number): Before {
  found.flow = flow;
  found.valve = valve;
  return found;
}

function forgetBefore(context: UnitContext): void {
  keep(context, cell.flowBefore, Number.NaN);
  keep(context, cell.valveBefore, Number.NaN);
}

/** 1 where the valve stands as before or further open, or where it is not known. */
const closedFactor = (valve: number, usual: number): number => (valve < usual ? (valve / usual) ** 2 : 1);

/** m³/s; by the loop's rated flow where commissioning did not state the facility's. Water: 1000 kg/m³ is near enough for a tenth. */
function commissionedFlow({ unit: { design } }: UnitContext): number {
  const massFlow = design.commissioned.uaFacilityMassFlowKgPerS;
  return massFlow === null ? design.ratedFlowM3PerS : massFlow / 1000;
}
