import { expanded } from '@ebbline/shared/uncertainty/combine';
import { nodeWall, type Wall } from '../lower-walls';
import { takeNodeInputs } from '../node-pressure';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

const wall: Wall = { margin: Number.NaN, u: Number.NaN, place: -1 };

/** Least of p − p_v(t) over the wetted nodes, each with the temperature of its own main. */
export function deriveBoilingMargin(frame: UnitFrame): void {
  frame.tally.begin();
  takeNodeInputs(frame, !frame.stopped);
  nodeWall(frame, wall);
  writeDerived(
    frame.state,
    frame.plan.slot.boilingMargin,
    frame.nowMs,
    frame.tally,
    wall.margin,
    expanded(wall.u),
    wall.place,
  );
}
