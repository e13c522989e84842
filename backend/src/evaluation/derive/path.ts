import type { PathPlace } from '@ebbline/shared/contract/live-feed';
import type { Celsius } from '@ebbline/shared/units/quantity';
import type { CompiledSite, WettedNode } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import { finiteOrNull } from './figure';
import { readUnitFrame, type UnitFrame } from './unit-frame';

/**
 * The water's way from supply tank to separator with pressure, boiling pressure, temperature and elevation.
 * The nodes stand in the order of the site file, the supply main's before the return main's. Computed when asked.
 */
export function path(site: CompiledSite, state: SlotState, unitIndex: number, stopped = false): PathPlace[] {
  const frame = readUnitFrame(site, state, unitIndex, Number.NaN, stopped);
  const { nodes, design } = frame.plan.unit;
  return [
    tank(frame, 'supplyTank', 'Supply tank', 'supplyTank.pressure', frame.supplyTemperature, design.supplyTankSurfaceM),
    ...nodes.flatMap((node, i) => (node.main === 'supply' ? [place(frame, node, i, frame.supplyTemperature)] : [])),
    ...nodes.flatMap((node, i) => (node.main === 'return' ? [place(frame, node, i, frame.returnTemperature)] : [])),
    tank(frame, 'separator', 'Separator', 'separator.pressure', frame.returnTemperature, design.separatorSurfaceM),
  ];
}

function place(frame: UnitFrame, node: WettedNode, i: number, temperature: Celsius): PathPlace {
  return {
    id: node.id,
    name: node.name,
    elevation: node.elevationM,
    pressurePa: finiteOrNull(frame.nodes.now[i] ?? Number.NaN),
    vapourPressurePa: finiteOrNull(frame.nodes.vapour[i] ?? Number.NaN),
    temperature: finiteOrNull(temperature),
    outsideUnit: true,
  };
}

function tank(
  frame: UnitFrame,
  id: string,
  name: string,
  point: 'supplyTank.pressure' | 'separator.pressure',
  temperature: Celsius,
  elevation: number | null,
): PathPlace {
  return {
    id,
    name,
    elevation,
    pressurePa: finiteOrNull(frame.tally.take(frame.state, frame.plan.slot[point])),
    vapourPressurePa: finiteOrNull(frame.plan.fluid.vapourPressure(temperature)),
    temperature: finiteOrNull(temperature),
    outsideUnit: false,
  };
}
