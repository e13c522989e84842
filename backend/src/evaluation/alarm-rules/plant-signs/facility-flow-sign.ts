import { judgeBelow } from '../below';
import type { Limits } from '../entry';
import { keep, recall, usable, type Finding, type UnitContext } from '../judge-context';
import { Verdict } from '../verdict';

const cell = { flowBefore: 0, valveBefore: 1 } as const;

/** A valve that is told to stand so far shut wants no flow. */
const shutShare = 0.1;
/** Where nothing is known of the flow before, it counts as lost below this share of what commissioning found. */
const lostOfCommissioned = 0.1;

/** What flowed before, and how far the valve stood open then. */
interface Before {
  readonly flow: number;
  readonly valve: number;
}

/**
 * Facility flow by its meter: lost where it is below `limit` times its own mean of the last ten minutes or of the last day, and the
 * valve has not been closed as much. The mean of a day is for a flow that ebbs away within an hour or so, and is asked only where the
 * valve is known: without it less flow may be less load. What was before is kept while the flow is lost; where a restart took
 * it the alarm holds, until the flow is half of what commissioning found. Flow of a valve falls about with the square of its
 * lift, between linear and equal-percentage ones.
 */
export function judgeFacilityFlow(context: UnitContext, limits: Limits, active: boolean, finding: Finding): void {
  const { plant, slots, state, unitIndex } = context;
  const flow = usable(state, slots.facilityFlow);
  finding.value = flow;
  const valve = usable(state, slots.valveCommand >= 0 ? slots.valveCommand : slots.valvePosition);
  if (valve < shutShare) {
    forgetBefore(context);
    finding.verdict = Verdict.no;
    return;
  }
  const before = flowBefore(context, valve);
  const isLost = Number.isNaN(before.flow);
  const share = isLost && !active ? lostOfCommissioned : limits.limit;
  finding.limit = share * (isLost ? commissionedFlow(context) : before.flow * closedFactor(valve, before.valve));
  finding.verdict = judgeBelow(flow, finding.limit, limits.deadband * finding.limit, active);
  if (isLost && active) {
    if (finding.verdict === Verdict.yes) finding.verdict = Verdict.hold;
    return;
  }
  if (finding.verdict === Verdict.yes) {
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

/** What is kept while the flow is lost; else the mean that asks for more at the present lift. `flow` NaN where nothing is known. */
function flowBefore(context: UnitContext, valve: number): Before {
  const { plant, unitIndex } = context;
  const kept = recall(context, cell.flowBefore);
  if (!Number.isNaN(kept)) return { flow: kept, valve: recall(context, cell.valveBefore) };
  const minutes = { flow: plant.facilityFlow.mean(unitIndex), valve: plant.facilityValve.mean(unitIndex) };
  const day = { flow: plant.facilityFlowOfDay.mean(unitIndex), valve: plant.facilityValveOfDay.mean(unitIndex) };
  if (Number.isNaN(day.flow + day.valve + valve)) return minutes;
  if (Number.isNaN(minutes.flow)) return day;
  const asks = ({ flow, valve: lift }: Before): number => flow * closedFactor(valve, lift);
  return asks(day) > asks(minutes) ? day : minutes;
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
