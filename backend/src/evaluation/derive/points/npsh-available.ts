import { standardGravityMPerS2 } from '@ebbline/shared/units/constants';
import { pumpInletNpsh, type Wall } from '../lower-walls';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { writeDerived } from '../write-derived';
import { expanded } from '@ebbline/shared/uncertainty/combine';

const found: Wall = { margin: Number.NaN, u: Number.NaN, place: -1 };

export const hasNpsh = ({ slot, unit }: UnitPlan): boolean =>
  slot['pump.inlet.pressure'] >= 0 ||
  (slot['separator.pressure'] >= 0 && unit.design.separatorSurfaceM !== null && unit.design.pumpInletM !== null);

/** Net positive suction head available at the pump, m; without friction while it stands. */
export function deriveNpshAvailable(frame: UnitFrame): void {
  frame.tally.begin();
  const available = pumpInletNpsh(frame, found);
  const perPa = 1 / (frame.returnColumnDensity * standardGravityMPerS2);
  const u = found.u * perPa;
  if (frame.budget !== null) frame.budget.scale(perPa);
  const { state, plan, nowMs, tally } = frame;
  writeDerived(state, plan.slot.npshAvailable, nowMs, tally, available, expanded(u), plan.unit.pumpInletPlace);
}
