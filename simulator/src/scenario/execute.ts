import { fail, ok } from '@ebbline/shared/errors/result';
import { faultKinds, faultSizes, type FaultKind, type FaultOrder, type FaultSize } from '../faults/fault';
import { sensorFaultKinds, type SensorFaultKind } from '../sensors/sensor-fault';
import { pointsWith } from './catalogue/sensor-fault-kinds';
import type { Command } from './command';
import type { Executed, Stage } from './stage';
import { executeOperation } from './execute-operation';
import { shapeFaultKinds, type ShapeFaultKind } from './shape-faults';
import type { Timed } from './timed';
import type { UnitSimulation } from './unit-simulation';

/** Does what a command says. */
export function execute(command: Command, stage: Stage): Executed {
  const { id } = command.what;
  if (id === 'deepLow') return overSite(command, stage);
  const simulation = stage.units.find(({ unit }) => unit.id === command.unit) as UnitSimulation;
  if (command.what.kind === 'operation') return executeOperation(command, stage, simulation);
  const shapeFault = shapeFaultKinds.find((kind) => kind === id);
  if (shapeFault) return atShape(shapeFault, command, simulation);
  const sensorFault = sensorFaultKinds.find((kind) => kind === id);
  if (sensorFault) return atSensor(sensorFault, command, simulation);
  return inPlant(id as FaultKind, command, simulation);
}

function overSite({ action, keys, what }: Command, { events, nowS }: Stage): Executed {
  const low = events.deepLow;
  return startOrRepair(action, low?.repairedS === null ? low : undefined, what.title, nowS, () =>
    events.beginLow(sizeOf(keys), nowS),
  );
}

function inPlant(fault: FaultKind, command: Command, simulation: UnitSimulation): Executed {
  const { faults, nowS } = simulation;
  const { keys } = command;
  const order = {
    ...keys,
    fault: faultKinds.find((kind) => kind === fault) as FaultKind,
    size: sizeOf(keys),
    rack: Math.max(0, command.branch),
    checkValve: keys['checkValve'] === 'stuckOpen' ? 'stuckOpen' : 'good',
    direction: keys['direction'] === 'fall' ? 'fall' : 'rise',
  } satisfies FaultOrder;
  const same = faults.find(
    (active) => active.order.fault === fault && active.order.rack === order.rack && active.repairedS === null,
  );
  const what = `${command.what.title} at ${command.unit}`;
  return startOrRepair(command.action, same, what, nowS, () => {
    faults.push({ order, sinceS: nowS, repairedS: null });
  });
}

function atShape(fault: ShapeFaultKind, { action, keys, what, unit }: Command, simulation: UnitSimulation): Executed {
  const { shapeFaults, nowS } = simulation;
  const same = shapeFaults.find((active) => active.fault === fault && active.repairedS === null);
  return startOrRepair(action, same, `${what.title} at ${unit}`, nowS, () => {
    shapeFaults.push({ fault, size: sizeOf(keys), sinceS: nowS, repairedS: null });
  });
}

function atSensor(fault: SensorFaultKind, command: Command, simulation: UnitSimulation): Executed {
  const { keys, action } = command;
  const point = keys['point'] ?? '';
  const points = pointsWith(fault, simulation.unit);
  if (!points.includes(point)) {
    const message = `${command.unit} has no such sensor for it: point is one of ${points.join(', ')}`;
    return fail({ code: 'COMMAND_POINT', message });
  }
  const { faults } = simulation.sensors;
  const same = faults.find((active) => active.order.fault === fault && active.order.point === point);
  const what = `${command.what.title} at ${command.unit} ${point}`;
  return startOrRepair(action, same?.repairedS === null ? same : undefined, what, simulation.nowS, () => {
    const order = {
      fault,
      size: sizeOf(keys),
      point,
      direction: keys['direction'] === 'fall' ? 'fall' : 'rise',
    } as const;
    faults.push({ order, memory: new Map(), sinceS: simulation.nowS, repairedS: null });
  });
}

const sizeOf = (keys: Command['keys']): FaultSize => faultSizes.find((size) => size === keys['size']) ?? 'usual';

function startOrRepair(
  action: Command['action'],
  same: Timed | undefined,
  what: string,
  nowS: number,
  start: () => void,
): Executed {
  if (action === 'repair') {
    if (!same) return fail({ code: 'FAULT_NOT_ACTIVE', message: `${what} is not active: nothing to repair` });
    same.repairedS = nowS;
  } else {
    if (same) return fail({ code: 'FAULT_ALREADY_ACTIVE', message: `${what} is active already: repair it first` });
    start();
  }
  return ok(null);
}
