import type { UnitContext } from '../judge-context';
import { stepOf } from '../step';
import { branchPressureSignal } from './air-memory';
import { fallOfFlow } from './fall-of-flow';

/** Rise of a branch's return pressure that counts as one whole sign: Pa. A cut server hose gives twice this in a second. */
const wholeRisePa = 10_000;
/** Fall of a branch's flow that counts as one whole sign: share. A cut server hose gives twice this. */
const wholeFall = 0.25;
/** Below so much of a sign no branch is named. */
export const leastScore = 0.2;
/** The strongest has to lead the next by so much, or it might be either. */
const lead = 1.5;

export interface BranchScore {
  branch: number;
  score: number;
}

/**
 * The branch whose flow fell and return pressure rose most within the window: `branch` −1 where none stands out
 * or none is measured. Writes into `result`.
 */
export function scoreBranches(context: UnitContext, result: BranchScore): void {
  const first = context.air.firstSignal[context.unitIndex] as number;
  let best = 0;
  let second = 0;
  let branchOfBest = -1;
  const count = context.air.branchCount[context.unitIndex] as number;
  for (let branch = 0; branch < count; branch += 1) {
    const score = scoreOf(context, first, branch);
    if (score > best) {
      second = best;
      best = score;
      branchOfBest = branch;
    } else if (score > second) second = score;
  }
  const stands = best >= leastScore && best >= lead * second;
  result.branch = stands ? branchOfBest : -1;
  result.score = stands ? best : 0;
}

/** NaN, and so never the best, where neither flow nor return pressure is measured. The flow of one that is shut says nothing. */
function scoreOf(context: UnitContext, first: number, branch: number): number {
  const { rings } = context.air;
  const fall = fallOfFlow(context, first, branch) / wholeFall;
  const rise = stepOf(rings, branchPressureSignal(first, branch)) / wholeRisePa;
  if (Number.isNaN(fall)) return rise;
  return Number.isNaN(rise) ? fall : fall + rise;
}
