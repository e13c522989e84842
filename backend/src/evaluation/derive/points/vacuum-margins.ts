import { vacuumMargin } from '@ebbline/shared/hydraulics/pressure-margins';
import { expanded } from '@ebbline/shared/uncertainty/combine';
import { pascalAbsolute } from '@ebbline/shared/units/quantity';
import { nodeUncertainty, takeNodeInputs } from '../node-pressure';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

/** Ambient minus the highest pressure of a wetted node outside the unit, in the state the loop is in now; both mains count. */
export function deriveVacuumMargin(frame: UnitFrame): void {
  deriveMargin(frame, frame.plan.slot.vacuumMargin, false);
}

/** The same for the worse of now and stopped (standing columns from both tanks, no friction): what a pump trip would leave. */
export function deriveVacuumMarginWorst(frame: UnitFrame): void {
  deriveMargin(frame, frame.plan.slot.vacuumMarginWorst, true);
}

/** A node of an isolated branch is left out: the loop's margin says nothing of it, and it is not protected by it. */
function deriveMargin(frame: UnitFrame, target: number, worst: boolean): void {
  const { tally, plan, nodes } = frame;
  tally.begin();
  tally.note(frame.ambient.reasons, frame.ambient.sourceMs);
  takeNodeInputs(frame, !frame.stopped);
  let highest = -Infinity;
  let binding = -1;
  for (let i = 0; i < plan.nodes.count; i += 1) {
    if (nodes.inLoop[i] === 0) continue;
    const now = nodes.now[i] as number;
    const pressure = worst ? Math.max(now, nodes.stopped[i] as number) : now;
    if (!(pressure <= highest)) {
      highest = pressure;
      binding = i;
      if (Number.isNaN(pressure)) break;
    }
  }
  const value = vacuumMargin(frame.ambient.pressure, pascalAbsolute(highest));
  const flowing = !frame.stopped && highest === nodes.now[binding];
  const u = binding < 0 ? Number.NaN : nodeUncertainty(frame, binding, 'ambient', flowing);
  writeDerived(frame.state, target, frame.nowMs, tally, value, expanded(u), plan.unit.nodes[binding]?.place ?? -1);
}
