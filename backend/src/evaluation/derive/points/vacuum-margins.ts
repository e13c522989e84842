import { vacuumMargin } from '@ebbline/shared/hydraulics/pressure-margins';
import { combine3, expanded } from '@ebbline/shared/uncertainty/combine';
import { pascalAbsolute, type PascalAbsolute } from '@ebbline/shared/units/quantity';
import type { WettedNode } from '../../site/compiled-site';
import {
  anchorSlot,
  belowAmbientUncertainty,
  elevationUncertainty,
  lossUncertainty,
  nodePressure,
  takeNodeInputs,
} from '../node-pressure';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

/** Ambient minus the highest pressure of a wetted node outside the unit, in the state the loop is in now; both mains count. */
export function deriveVacuumMargin(frame: UnitFrame): void {
  deriveMargin(frame, frame.plan.slot.vacuumMargin, pressureNow);
}

/** The same for the worse of now and stopped (standing columns from both tanks, no friction): what a pump trip would leave. */
export function deriveVacuumMarginWorst(frame: UnitFrame): void {
  deriveMargin(frame, frame.plan.slot.vacuumMarginWorst, pressureWorst);
}

const pressureNow = (frame: UnitFrame, node: WettedNode): PascalAbsolute => nodePressure(frame, node, !frame.stopped);

const pressureWorst = (frame: UnitFrame, node: WettedNode): PascalAbsolute =>
  frame.stopped
    ? nodePressure(frame, node, false)
    : pascalAbsolute(Math.max(nodePressure(frame, node, true), nodePressure(frame, node, false)));

function deriveMargin(
  frame: UnitFrame,
  target: number,
  pressureOf: (frame: UnitFrame, node: WettedNode) => PascalAbsolute,
): void {
  const { tally, plan } = frame;
  tally.begin();
  tally.note(frame.ambient.reasons, frame.ambient.sourceMs);
  takeNodeInputs(frame, !frame.stopped);
  let highest = pascalAbsolute(-Infinity);
  let binding: WettedNode | undefined;
  for (const node of plan.unit.nodes) {
    const pressure = pressureOf(frame, node);
    if (pressure > highest || Number.isNaN(pressure)) {
      highest = pressure;
      binding = node;
      if (Number.isNaN(pressure)) break;
    }
  }
  const value = vacuumMargin(frame.ambient.pressure, highest);
  const u = binding === undefined ? Number.NaN : marginUncertainty(frame, binding);
  writeDerived(frame.state, target, frame.nowMs, tally, value, expanded(u), binding?.place ?? -1);
}

function marginUncertainty(frame: UnitFrame, node: WettedNode): number {
  return combine3(
    belowAmbientUncertainty(frame, anchorSlot(frame, node)),
    elevationUncertainty(frame, node.main),
    lossUncertainty(frame, node.lossAtRatedFlowPa, !frame.stopped),
  );
}
