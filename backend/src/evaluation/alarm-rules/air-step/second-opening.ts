import { recall, type UnitContext } from '../judge-context';
import type { RuleMemory } from '../rule-memory';
import { hasPlace, placesToTell, withPlace } from '../told-places';
import type { AirMemory } from './air-memory';
import { branchCloses } from './branch-closes';
import type { BranchScore } from './name-branch';

/** So long signs of one opening may move from branch to branch, as its gas goes round: none of them is a second one. Own rule. */
const settlesMs = 60_000;
/** Gas of the first opening moves flow and pressure of the other branches too; a line that opens there gives four whole signs. Own rule. */
const ownLine = 1;

/** Cells of AIR-1 beside those of `airStillComes` and `branchCloses`. */
const cell = { told: 2, newSinceMs: 3 } as const;
/** A step is told although no branch stands out. */
const place = { step: 0, firstBranch: 1 } as const;

/**
 * The step that raised AIR-1 is over, and what steps now is something else. With alternating tanks never: there the branch that was
 * named says whether air still comes, and each change-over is a step.
 */
export const isSettled = ({ air, nowMs, unit, unitIndex }: UnitContext, active: boolean): boolean =>
  active && unit.shape !== 'b' && nowMs - (air.stepMs[unitIndex] as number) >= settlesMs;

/**
 * While AIR-1 stands, a step that is above the limit: has another line come open, in a branch that was not told? Once a second.
 * Not where the branch is worked on under a permit, nor while one closes.
 * @param sign the branch that stands out in this step; null: there is no step now
 */
export function opensBeside(
  context: UnitContext,
  sign: BranchScore | null,
  onDelayMs: number,
  active: boolean,
): boolean {
  const told = recall(context, cell.told);
  if (!isSettled(context, active) || Number.isNaN(told)) {
    if (sign !== null) placesToTell(context, cell, withNamed(context, active ? told : Number.NaN), onDelayMs, false);
    return false;
  }
  const isNew = sign !== null && sign.score >= ownLine && !hasPermit(context, sign.branch) && !branchCloses(context);
  const shows = isNew ? withPlace(told, place.firstBranch + sign.branch) : told;
  return placesToTell(context, cell, shows, onDelayMs, active) !== 0;
}

/** What was told ends with the alarm. */
export const forgetTold = (context: UnitContext): void => void placesToTell(context, cell, 0, 0, false);

/** AIR-1 has told of this branch since it was raised. */
export const airWasToldAt = (
  air: AirMemory,
  memory: RuleMemory,
  unitIndex: number,
  airAlarm: number,
  branch: number,
): boolean => {
  if (branch < 0) return false;
  const told = memory.get(airAlarm, cell.told);
  return air.namedBranch[unitIndex] === branch || (!Number.isNaN(told) && hasPlace(told, place.firstBranch + branch));
};

function withNamed({ air, unitIndex }: UnitContext, told: number): number {
  const named = air.namedBranch[unitIndex] as number;
  const step = withPlace(0, place.step);
  return named < 0 ? step : withPlace(Number.isNaN(told) ? step : told, place.firstBranch + named);
}

const hasPermit = ({ permits, unitIndex }: UnitContext, branch: number): boolean =>
  permits.count[unitIndex] !== 0 &&
  (permits.wholeLoop[unitIndex] === 1 || permits.branchesOf(unitIndex).includes(branch));
