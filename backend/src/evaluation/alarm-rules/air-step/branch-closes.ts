import { keep, recall, type UnitContext } from '../judge-context';
import { stepRingLength } from '../step';
import { branchFlowSignal, branchPressureSignal } from './air-memory';
import { shutFlowOf } from './fall-of-flow';

/** A branch that has lost so much of its flow while its return pressure fell by more than this, Pa, is shut or blocked: an open hose lifts it. */
const closedFall = 0.3;
const fallenPa = 1000;
/** So long after it gas and levels may still follow from that: own rule. */
const settlesMs = 30_000;

/** Cell of AIR-1 beside the one of `airStillComes`. */
const cell = { closedMs: 1 } as const;

/** A branch closes, or did a short while ago. Asked only where something looks like air. */
export function branchCloses(context: UnitContext): boolean {
  if (closesNow(context)) keep(context, cell.closedMs, context.nowMs);
  return context.nowMs - recall(context, cell.closedMs) < settlesMs;
}

function closesNow(context: UnitContext): boolean {
  const { air, slots, unitIndex } = context;
  const { rings } = air;
  const first = air.firstSignal[unitIndex] as number;
  const oldest = stepRingLength - 1;
  for (let branch = 0; branch < slots.branchFlow.length; branch += 1) {
    const flow = branchFlowSignal(first, branch);
    const pressure = branchPressureSignal(first, branch);
    const before = rings.at(flow, oldest);
    if (before < shutFlowOf(context, branch)) continue;
    const shut = rings.at(flow, 0) < (1 - closedFall) * before;
    if (shut && rings.at(pressure, 0) < rings.at(pressure, oldest) - fallenPa) return true;
  }
  return false;
}
