import { judgeBelow } from '../below';
import type { Limits } from '../entry';
import { keep, recall, usable, type Finding, type UnitContext } from '../judge-context';
import { Verdict } from '../verdict';

const cell = { flowBefore: 0, valveBefore: 1 } as const;

/** A valve that is told to stand so far shut wants no flow. */
const shutShare = 0.1;
/** Where nothing is known of the flow before, it counts as lost below this share of what commissioning found. */
const lostOfCommissioned = 0.1;

/**
 * Facility flow by its meter: lost where it is below `limit` times its own mean of the last ten minutes, and the valve has not been
 * closed as much. The mean is kept while the flow is lost. Flow of a valve falls about with the square of its lift, between linear
 * and equal-percentage ones.
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
  const kept = recall(context, cell.flowBefore);
  const usual = Number.isNaN(kept) ? plant.facilityFlow.mean(unitIndex) : kept;
  const valveUsual = Number.isNaN(kept) ? plant.facilityValve.mean(unitIndex) : recall(context, cell.valveBefore);
  finding.limit = Number.isNaN(usual)
    ? lostOfCommissioned * commissionedFlow(context)
    : limits.limit * usual * closedFactor(valve, valveUsual);
  finding.verdict = judgeBelow(flow, finding.limit, limits.deadband * finding.limit, active);
  if (finding.verdict === Verdict.yes) {
    if (Number.isNaN(kept)) keep(context, cell.flowBefore, usual);
    if (Number.isNaN(kept)) keep(context, cell.valveBefore, valveUsual);
    return;
  }
  if (finding.verdict === Verdict.no && !active) forgetBefore(context);
  plant.facilityFlow.push(unitIndex, flow, context.nowMs);
  plant.facilityValve.push(unitIndex, valve, context.nowMs);
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
