import { expanded } from '@ebbline/shared/uncertainty/combine';
import { reasonBit } from '../../slots/quality-reasons';
import { nodeUncertainty, takeMainInputs } from '../node-pressure';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

/** Absolute pressure at every wetted place as it is now, each with its place. */
export function deriveNodePressures(frame: UnitFrame): void {
  writeNodes(frame, frame.plan.nodes.pressureSlot, frame.nodes.now, !frame.stopped);
}

/** The same once the water stands: columns from both tanks, no friction. While it stands, the same as now. */
export function deriveNodePressuresStopped(frame: UnitFrame): void {
  writeNodes(frame, frame.plan.nodes.stoppedSlot, frame.nodes.stopped, false);
}

/** The places of one main rest on the same sensors. One of an isolated branch has no value: no suction reaches it. */
function writeNodes(frame: UnitFrame, slots: Int32Array, pressures: Float64Array, flowing: boolean): void {
  const { tally, plan, nodes } = frame;
  for (let onReturn = 0; onReturn <= 1; onReturn += 1) {
    tally.begin();
    takeMainInputs(frame, onReturn === 1 ? 'return' : 'supply', flowing);
    const { reasons } = tally;
    for (let i = 0; i < plan.nodes.count; i += 1) {
      const slot = slots[i] as number;
      if (plan.nodes.onReturn[i] !== onReturn || slot < 0) continue;
      tally.reasons = nodes.inLoop[i] === 0 ? reasons | reasonBit.notApplicable : reasons;
      const u = nodeUncertainty(frame, i, 'vacuum', flowing);
      const place = plan.unit.nodes[i]?.place ?? -1;
      writeDerived(frame.state, slot, frame.nowMs, tally, pressures[i] as number, expanded(u), place);
    }
  }
}
