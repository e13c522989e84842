import { vacuumMargin } from '@ebbline/shared/hydraulics/pressure-margins';
import { combine2, expanded } from '@ebbline/shared/uncertainty/combine';
import { pascalAbsolute } from '@ebbline/shared/units/quantity';
import { followsAmbient } from '../standard-uncertainty';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { partOf } from '../write-point';
import { writeDerived } from '../write-derived';

export const hasBranchPressure = ({ unit }: UnitPlan): boolean =>
  unit.branches.some(({ slot }) => slot.returnPressure >= 0);

/**
 * Ambient minus the pressure that a branch's own sensor reads, Pa; below zero an opening there lets water out. It holds for an isolated
 * branch too, for which no margin of the loop holds: what is trapped keeps the pressure at which its valves were shut, and rises as it
 * warms. Lower places of the branch stand higher by their column of water.
 */
export function deriveBranchVacuumMargin(frame: UnitFrame): void {
  const { tally, state, plan, site, ambient } = frame;
  for (let i = 0; i < plan.unit.branches.length; i += 1) {
    const branch = plan.unit.branches[i];
    const target = plan.branchMarginSlot[i] ?? -1;
    if (branch === undefined || target < 0) continue;
    const own = branch.slot.returnPressure;
    tally.begin();
    tally.note(ambient.reasons, ambient.sourceMs);
    const pressure = tally.take(state, own);
    // Of a gauge or vacuum sensor the barometer's error cancels against ambient.
    const barometer = followsAmbient(site.slots, own) ? 0 : part(frame, 'ambient.pressure', ambient.u);
    const value = vacuumMargin(ambient.pressure, pascalAbsolute(pressure));
    writeDerived(
      state,
      target,
      frame.nowMs,
      tally,
      value,
      expanded(combine2(partOf(frame, own, 1), barometer)),
      branch.place,
    );
  }
}
