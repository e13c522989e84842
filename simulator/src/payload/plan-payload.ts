import { branchId, plateId } from '../plant/plant-readings';
import { unitTypes } from '../plant/unit-types';
import type { FleetUnit } from '../scenario/demo-fleet';
import { northPayload } from './north-payload';
import type { PayloadRow, Tell } from './payload-row';
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
  return rows
    .filter(({ point }) => unit.exhaustMeter || point !== 'vacuum.exhaustFlow')
    .flatMap((row) => filledIn(row, unit));
}

function filledIn(row: PayloadRow, unit: FleetUnit): PlannedValue[] {
  const { point, path, tell } = row;
  const racks = Array.from({ length: unitTypes[unit.kind].racks }, (_, index) => index);
  const fill = (name: 'branch' | 'plate', id: string): PlannedValue => ({
    point: point.replace('*', id),
    path: path.map((key) => key.replace(`{${name}}`, id)),
    tell,
  });
  if (point.startsWith('branch.*')) return racks.map((r) => fill('branch', branchId(r)));
  if (point.startsWith('plate.*')) return racks.flatMap((r) => platesOf(unit, r).map((id) => fill('plate', id)));
  return [{ point, path, tell }];
}

/** Ids of the plates of a rack that have a sensor. */
export function platesOf(unit: FleetUnit, rack: number): readonly string[] {
  if (unit.kind === 'bench') return [plateId(rack, 'b')];
  return unit.platesPerRack === 2 ? [plateId(rack, 'a'), plateId(rack, 'b')] : [plateId(rack, 'a')];
}
