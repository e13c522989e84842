import { combine2, combine3, rectangular } from '@ebbline/shared/uncertainty/combine';
import { baselineHalfWidth } from '../derive-constants';
import { gasAllowed, ownGas, takeOwnGas } from '../gas-allowed';
import { gasU } from '../gas-flow';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { writePoint } from '../write-point';
import { takeStored, writeGas } from './gas-load';

export const hasGasAllowance = ({ unit }: UnitPlan): boolean => unit.design.commissioned.gasLoadM3PerS !== null;

/**
 * Gas load that needs no one: commissioned baseline, gas budget of the last fill, open permits, tanks' own gas. Free
 * air. Settings and permits are of now, as the program itself holds them.
 */
export function deriveGasAllowance(frame: UnitFrame): void {
  frame.tally.begin();
  frame.tally.note(0, frame.nowMs);
  takeOwnGas(frame);
  writePoint(frame, frame.plan.slot.gasAllowance, gasAllowed(frame, false), allowanceU(frame));
}

/** Room air that comes in, free air: all gas that comes less what water gives off and the tanks make. Permits are part of it. */
export function deriveInLeak(frame: UnitFrame): void {
  const { tally, gasTally, gasComing, plan, memory } = frame;
  tally.begin();
  tally.note(gasTally.reasons, gasTally.oldestMs);
  takeStored(frame);
  takeOwnGas(frame);
  const permits = memory?.gas.permitM3PerS[plan.unitIndex] ?? 0;
  const ofWater = gasAllowed(frame, false) - permits;
  const u = combine2(gasU(frame, gasComing), allowanceU(frame));
  writeGas(frame, plan.slot.inLeak, gasComing.value - ofWater, u, gasComing);
}

/** The baseline moves, and a budget is an upper bound: it may be spent already. */
function allowanceU(frame: UnitFrame): number {
  const baseline = frame.plan.unit.design.commissioned.gasLoadM3PerS ?? Number.NaN;
  const budget = frame.memory?.gas.budgetRate(frame.plan.unitIndex) ?? 0;
  return combine3(
    part(frame, 'commissioning.gasLoad', rectangular(baseline * baselineHalfWidth)),
    part(frame, 'gas budget of the last fill', rectangular(budget)),
    part(frame, 'gas that the tanks make', 0.05 * ownGas(frame)),
  );
}
