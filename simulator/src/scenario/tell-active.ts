import type { DemoState } from '@ebbline/shared/contract/demo-faults';
import { strengthOf } from '../faults/active-faults';
import { faultTable } from '../faults/fault-table';
import { branchId } from '../plant/plant-readings';
import { sensorFaultTable } from '../sensors/sensor-fault-table';
import { wholeSite } from './catalogue/scenario-kind';
import type { SiteEvents } from './site-events';
import { strengthAt } from './timed';
import type { UnitSimulation } from './unit-simulation';

type Told = DemoState['active'][number];

const rounded = (strength: number): number => Number(strength.toFixed(3));

/** Every fault that is somewhere now, or is just leaving. */
export function tellActive(units: readonly UnitSimulation[], events: SiteEvents, nowS: number): Told[] {
  const told = units.flatMap((simulation) => [
    ...plantFaults(simulation),
    ...shapeFaults(simulation),
    ...sensorFaults(simulation),
    ...operations(simulation),
  ]);
  const low = events.deepLow;
  if (low) {
    const strength = rounded(Math.min(1, events.lowPa(nowS) / 2800));
    told.push({
      id: 'deepLow',
      unit: wholeSite,
      branch: null,
      forSeconds: nowS - low.sinceS,
      repaired: low.repairedS !== null,
      strength,
      keys: { size: low.size },
    });
  }
  return told;
}

const plantFaults = ({ faults, nowS, unit }: UnitSimulation): Told[] =>
  faults.map((active) => {
    const { fault, rack, ...rest } = active.order;
    return {
      id: fault,
      unit: unit.id,
      branch: faultTable[fault].inRack ? branchId(rack) : null,
      forSeconds: nowS - active.sinceS,
      repaired: active.repairedS !== null,
      strength: rounded(strengthOf(active, nowS)),
      keys: { ...rest },
    };
  });

const sensorFaults = ({ sensors, nowS, unit }: UnitSimulation): Told[] =>
  sensors.faults.map((active) => {
    const { fault, ...keys } = active.order;
    return {
      id: fault,
      unit: unit.id,
      branch: null,
      forSeconds: nowS - active.sinceS,
      repaired: active.repairedS !== null,
      strength: rounded(strengthAt(active, sensorFaultTable[fault], nowS)),
      keys: { ...keys },
    };
  });

const shapeFaults = (simulation: UnitSimulation): Told[] =>
  simulation.shapeFaults.map((active) => ({
    id: active.fault,
    unit: simulation.unit.id,
    branch: null,
    forSeconds: simulation.nowS - active.sinceS,
    repaired: active.repairedS !== null,
    strength: 1,
    keys: { size: active.size },
  }));

/** Work under way, branches that are shut and hoses that are open. */
function operations(simulation: UnitSimulation): Told[] {
  const { unit, nowS, inputs } = simulation;
  const told = (id: string, rack: number | null, forSeconds: number): Told => ({
    id,
    unit: unit.id,
    branch: rack === null ? null : branchId(rack),
    forSeconds,
    repaired: false,
    strength: 1,
    keys: {},
  });
  const underWay = simulation.operations.map(({ order, sinceS }) => told(order.operation, null, nowS - sinceS));
  const { isolated, openedHose } = inputs.orders;
  const shut = isolated.flatMap((is, rack) => (is ? [told('isolateBranch', rack, 0)] : []));
  const open = openedHose.flatMap((hose, rack) => (hose ? [told('openHose', rack, 0)] : []));
  return [...underWay, ...shut, ...open];
}
