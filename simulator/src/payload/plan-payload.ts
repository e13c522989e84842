import { branchId, plateId } from '../plant/plant-readings';
import { tankIds } from '../plant/alternating-tanks/alternating-readings';
import type { FleetUnit } from '../scenario/demo-fleet';
import { racksOf } from '../scenario/unit-parameters';
import { northPayload } from './north-payload';
import type { PayloadRow, Tell } from './payload-row';
import { lacks } from './sensor-sets';
import { southPayload } from './south-payload';

/** One value of a unit's payload, with everything filled in. */
export interface PlannedValue {
  readonly point: string;
  readonly path: readonly string[];
  readonly tell: Tell;
}

/** What a unit's payload holds, in order: only what the unit has sensors for. */
export function planPayload(unit: FleetUnit): readonly PlannedValue[] {
  const rows = unit.hall === 'north' ? northPayload : southPayload;
  return rows.filter(({ point }) => !lacks(unit, point)).flatMap((row) => filledIn(row, unit));
}

function filledIn(row: PayloadRow, unit: FleetUnit): PlannedValue[] {
  const { point, path, tell } = row;
  const racks = Array.from({ length: racksOf(unit) }, (_, index) => index);
  const fill = (name: 'branch' | 'plate' | 'server' | 'tank', id: string): PlannedValue => ({
    point: point.replace('*', id),
    path: path.map((key) => key.replace(`{${name}}`, id)),
    tell,
  });
  if (point.startsWith('branch.*')) return racks.map((r) => fill('branch', branchId(r)));
  if (point.startsWith('plate.*')) return racks.flatMap((r) => platesOf(unit, r).map((id) => fill('plate', id)));
  if (point.startsWith('server.*')) return racks.flatMap((r) => serversOf(r).map((id) => fill('server', id)));
  if (point.startsWith('tank.*')) return tankIds.map((id) => fill('tank', id));
  return [{ point, path, tell }];
}

/** Ids of the plates of a rack that have a sensor. */
export function platesOf(unit: FleetUnit, rack: number): readonly string[] {
  if (unit.kind === 'bench') return [plateId(rack, 'b')];
  return unit.platesPerRack === 2 ? [plateId(rack, 'a'), plateId(rack, 'b')] : [plateId(rack, 'a')];
}

/** Ids of the servers of a rack that tell of themselves, where any do: each has the plate of the same id. */
export const serversOf = (rack: number): readonly string[] => [plateId(rack, 'a'), plateId(rack, 'b')];
