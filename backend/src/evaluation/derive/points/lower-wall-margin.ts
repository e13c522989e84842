import { expanded } from '@ebbline/shared/uncertainty/combine';
import { nearestLowerWall, type NearestWall } from '../nearest-lower-wall';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

const wall: NearestWall = { margin: Number.NaN, u: Number.NaN, place: -1, kind: null };

/** Margin to the wall that binds from below: boiling at a node, NPSH at the pump's inlet, or boiling at a plate's wall. Pa. */
export function deriveLowerWallMargin(frame: UnitFrame): void {
  frame.tally.begin();
  nearestLowerWall(frame, wall);
  writeDerived(
    frame.state,
    frame.plan.slot.lowerWallMargin,
    frame.nowMs,
    frame.tally,
    wall.margin,
    expanded(wall.u),
    wall.place,
  );
}
