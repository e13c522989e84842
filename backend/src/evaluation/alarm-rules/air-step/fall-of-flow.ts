import type { UnitContext } from '../judge-context';
import { oldEnd, stepOf } from '../step';
import { branchFlowSignal } from './air-memory';

/**
 * A branch with a smaller share of its rated flow is shut: what its meter then reads is its zero, some tenths of a percent of full
 * scale (common practice, no source), and a change of that is no fall of flow.
 */
const shutFlow = 0.05;

/** Below this flow a branch counts as shut, m³/s. */
export function shutFlowOf({ unit }: Pick<UnitContext, 'unit'>, branch: number): number {
  const rated = unit.branches[branch]?.ratedFlowM3PerS;
  return shutFlow * (rated ?? unit.design.ratedFlowM3PerS / Math.max(1, unit.branches.length));
}

/** Share of its flow that a branch has lost within the window of a step; NaN where that is not known, or it was shut before. */
export function fallOfFlow(context: UnitContext, first: number, branch: number): number {
  const { rings } = context.air;
  const flow = branchFlowSignal(first, branch);
  const before = oldEnd(rings, flow);
  return before < shutFlowOf(context, branch) ? Number.NaN : -stepOf(rings, flow) / before;
}
