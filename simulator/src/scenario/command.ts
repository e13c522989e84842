import { fail, ok, type Failure, type Result } from '@ebbline/shared/errors/result';
import { faultKinds, faultSizes, type FaultOrder } from '../faults/fault';
import { faultTable } from '../faults/fault-table';
import { branchId } from '../plant/plant-readings';
import { unitTypes } from '../plant/unit-types';
import type { FleetUnit } from './demo-fleet';

export type CommandRefusal = Failure<'COMMAND_SHAPE' | 'COMMAND_UNIT' | 'COMMAND_BRANCH'>;

export interface Command {
  readonly unit: FleetUnit;
  readonly order: FaultOrder;
  readonly action: 'start' | 'repair';
}

type Fields = Readonly<Record<string, unknown>>;
const keys = ['fault', 'unit', 'branch', 'size', 'checkValve', 'direction', 'action'];

/** Reads one command; every refusal says what to send instead. */
export function readCommand(text: string, fleet: readonly FleetUnit[]): Result<Command, CommandRefusal> {
  const fields = asObject(text);
  if (fields === null)
    return shape('expected one JSON object such as {"fault":"slowInLeak","unit":"N3","action":"start"}');
  const strange = Object.keys(fields).filter((key) => !keys.includes(key));
  if (strange.length > 0) return shape(`unknown key ${strange[0]}; known are ${keys.join(', ')}`);
  const unit = fleet.find(({ id }) => id === fields.unit);
  if (!unit)
    return fail({ code: 'COMMAND_UNIT', message: `no such unit; there are ${fleet.map(({ id }) => id).join(', ')}` });

  const fault = choice(fields, 'fault', faultKinds);
  const size = choice(fields, 'size', faultSizes, 'usual');
  const checkValve = choice(fields, 'checkValve', ['good', 'stuckOpen'] as const, 'good');
  const direction = choice(fields, 'direction', ['rise', 'fall'] as const, 'rise');
  const action = choice(fields, 'action', ['start', 'repair'] as const, 'start');
  for (const part of [fault, size, checkValve, direction, action]) if (!part.ok) return part;
  if (!fault.ok || !size.ok || !checkValve.ok || !direction.ok || !action.ok) return shape('not a command');

  const racks = unitTypes[unit.kind].racks;
  const rack = faultTable[fault.value].inRack ? rackOf(fields.branch, racks) : 0;
  if (rack < 0) {
    const message = `${fault.value} needs a branch of ${unit.id}: ${branchId(0)}${racks > 1 ? ` to ${branchId(racks - 1)}` : ''}`;
    return fail({ code: 'COMMAND_BRANCH', message });
  }
  const order = {
    fault: fault.value,
    size: size.value,
    rack,
    checkValve: checkValve.value,
    direction: direction.value,
  };
  return ok({ unit, order, action: action.value });
}

const shape = (message: string): Result<never, CommandRefusal> => fail({ code: 'COMMAND_SHAPE', message });

function asObject(text: string): Fields | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Fields) : null;
  } catch {
    return null; // not JSON: refused by the caller with an example
  }
}

function choice<Word extends string>(
  fields: Fields,
  key: string,
  words: readonly Word[],
  usual?: Word,
): Result<Word, CommandRefusal> {
  const given = fields[key];
  if (given === undefined && usual !== undefined) return ok(usual);
  const word = words.find((candidate) => candidate === given);
  return word === undefined ? shape(`${key}: expected one of ${words.join(', ')}`) : ok(word);
}

function rackOf(branch: unknown, racks: number): number {
  for (let r = 0; r < racks; r += 1) if (branchId(r) === branch) return r;
  return -1;
}
