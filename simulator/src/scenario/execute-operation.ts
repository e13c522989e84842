import { fail, ok } from '@ebbline/shared/errors/result';
import { beginOperation } from '../plant/operations/active-operation';
import { operationKinds, type OperationKind, type OperationOrder } from '../plant/operations/operation';
import { ageingParts } from './ageing';
import { opposites, settingKinds, type SettingKind } from './catalogue/operation-kinds';
import type { Command } from './command';
import type { Executed, Stage } from './stage';
import { handMessage } from './hand-entries';
import type { UnitSimulation } from './unit-simulation';

/** Work on a unit: an operation that takes its time, an order set at once, ageing, or a reading by hand. */
export function executeOperation(command: Command, stage: Stage, simulation: UnitSimulation): Executed {
  const { keys } = command;
  const { id } = command.what;
  const operation = operationKinds.find((kind) => kind === id);
  if (operation) return work(operation, command, simulation);
  const setting = settingKinds.find((kind) => kind === id);
  if (setting) return set(setting, keys['value'] ?? '', simulation);
  const part = ageingParts.find((candidate) => candidate === keys['part']);
  if (part && id === 'age') simulation.ageing.setPace(part, Number(keys['timesAsFast']));
  else if (part) simulation.ageing.renew(part);
  else stage.say((sourceMs) => handMessage(command.unit, keys['point'] ?? '', keys['value'] ?? '', sourceMs));
  return ok(null);
}

function work(asked: OperationKind, command: Command, simulation: UnitSimulation): Executed {
  const operation = command.action === 'repair' ? opposites[asked] : asked;
  if (operation === undefined) {
    const message = `${command.what.title} has nothing that undoes it; give the operation that should follow`;
    return fail({ code: 'OPERATION_NOT_NOW', message });
  }
  const { operations, plant, nowS } = simulation;
  const litres = Number(command.keys['litres'] ?? 'missing');
  const freeLPerMin = Number(command.keys['freeLPerMin'] ?? 'asUsual');
  const order: OperationOrder = {
    operation,
    rack: Math.max(0, command.branch),
    ...(Number.isNaN(litres) ? {} : { volumeM3: litres / 1000 }),
    ...(Number.isNaN(freeLPerMin) ? {} : { freeM3PerS: freeLPerMin / 60_000 }),
  };
  // what changes the unit's mode takes the place of what was under way; work on a branch goes beside it
  if (!isBeside(operation))
    operations.splice(0, operations.length, ...operations.filter(({ order: o }) => isBeside(o.operation)));
  operations.push(beginOperation(order, plant.operated(), nowS));
  return ok(null);
}

const isBeside = (operation: OperationKind): boolean =>
  ['topUp', 'isolateBranch', 'restoreBranch', 'openHose', 'closeHose'].includes(operation);

function set(setting: SettingKind, value: string, { inputs }: UnitSimulation): Executed {
  const { orders } = inputs;
  switch (setting) {
    case 'setSupplyTemperature':
      orders.supplySetC = Number(value);
      return ok(null);
    case 'setSeparator':
      orders.separatorSetPa = 1000 * Number(value);
      return ok(null);
    case 'setSupplyTank':
      orders.supplyTankSetPa = 1000 * Number(value);
      return ok(null);
    case 'pressureReference':
      orders.pressureReference = value === 'gauge' ? 'gauge' : 'absolute';
      return ok(null);
    case 'facilityValve':
      orders.valveByHand = value === 'automatic' ? null : Number(value) / 100;
      return ok(null);
  }
}
