import { flowShare } from '@ebbline/shared/hydraulics/relative-resistance';
import { combine2 } from '@ebbline/shared/uncertainty/combine';
import { reasonBit } from '../../slots/quality-reasons';
import { shareFloor } from '../derive-constants';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { partOf } from '../write-point';
import { writeDerived } from '../write-derived';
import { expanded } from '@ebbline/shared/uncertainty/combine';
import { isIsolated } from './flow-shares';

export const hasBranchShares = ({ unit }: UnitPlan): boolean =>
  unit.branches.length > 1 &&
  unit.branches.every((branch) => branch.ratedFlowM3PerS !== null) &&
  unit.branches.some((branch) => branch.slot.flow >= 0);

/**
 * Flow of each branch against its share of what flows now, by the rated flows of what is open. What flows is
 * the loop's meter where one unit feeds the loop, else the sum of all branches. Does not apply to an isolated branch.
 */
export function deriveBranchFlowShare(frame: UnitFrame): void {
  const { tally, state, plan, site } = frame;
  const { branches, design, loop } = plan.unit;
  const byMeter = plan.slot['loop.flow'] >= 0 && (site.loops[loop]?.units.length ?? 1) === 1;
  // A site may list some branches of many: then what is not listed flows too.
  let open = byMeter ? design.ratedFlowM3PerS : 0;
  for (const { slot, ratedFlowM3PerS } of branches) {
    const isolated = isIsolated(frame, slot.isolated);
    if (byMeter ? isolated : !isolated) open += (byMeter ? -1 : 1) * (ratedFlowM3PerS ?? Number.NaN);
  }
  for (let i = 0; i < branches.length; i += 1) {
    const branch = branches[i];
    const target = plan.branchShareSlot[i] ?? -1;
    if (branch === undefined || target < 0) continue;
    tally.begin();
    const flow = tally.take(state, branch.slot.flow);
    if (isIsolated(frame, branch.slot.isolated)) tally.note(reasonBit.notApplicable, Infinity);
    const total = byMeter ? tally.take(state, plan.slot['loop.flow']) : sumOfBranches(frame);
    if (total < shareFloor * design.ratedFlowM3PerS) tally.note(reasonBit.undefined, Infinity);
    const expected = (total * (branch.ratedFlowM3PerS ?? Number.NaN)) / open;
    const value = flowShare(flow, expected);
    const u = byMeter
      ? combine2(partOf(frame, branch.slot.flow, 1 / expected), partOf(frame, plan.slot['loop.flow'], value / total))
      : amongBranches(frame, i, value, total, expected);
    writeDerived(state, target, frame.nowMs, tally, value, expanded(u), branch.place);
  }
}

/** A branch's flow is in the sum too: (1/expected − share/total) u of its own, share/total of each other one. */
function amongBranches(frame: UnitFrame, own: number, value: number, total: number, expected: number): number {
  let squares = 0;
  for (let i = 0; i < frame.plan.unit.branches.length; i += 1) {
    const slot = frame.plan.unit.branches[i]?.slot.flow ?? -1;
    squares += partOf(frame, slot, (i === own ? 1 / expected : 0) - value / total) ** 2;
  }
  return Math.sqrt(squares);
}

function sumOfBranches({ tally, state, plan }: UnitFrame): number {
  let sum = 0;
  for (const branch of plan.unit.branches) sum += tally.take(state, branch.slot.flow);
  return sum;
}
