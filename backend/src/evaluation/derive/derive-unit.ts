import type { CompiledSite } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import { derivedPointsOfUnit } from './derived-points';
import { readUnitFrame, type UnitFrame } from './unit-frame';

/**
 * Works out every derived point of a unit from the slots as they stand and writes it to its slot. `stopped`:
 * the transfer pump is known to stand, so the columns are static. After `deriveHall` of the unit's hall. Gives back
 * what was read; it holds until the unit's frame is read again.
 */
export function deriveUnit(
  site: CompiledSite,
  state: SlotState,
  unitIndex: number,
  nowMs: number,
  stopped: boolean,
): UnitFrame {
  const frame = readUnitFrame(site, state, unitIndex, nowMs, stopped);
  for (const point of derivedPointsOfUnit) point.derive(frame);
  return frame;
}
