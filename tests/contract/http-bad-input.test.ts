import type { ProblemCode } from '../../backend/src/connections/http-api/error-to-status';
import { problemSchema } from '@ebbline/shared/contract/problem';
import { describe, expect, it } from 'vitest';
import { stopAfterAll } from '../helpers/stop-after';
import { startApp } from '../integration/app/running-app';

const keep = stopAfterAll();
const app = keep(await startApp());
const long = 'x'.repeat(5000);
const now = new Date().toISOString();

async function problemOf(path: string, body?: string): Promise<readonly [number, string]> {
  const headers = { 'content-type': 'application/json' };
  const reply = await app.send(path, body === undefined ? undefined : { method: 'POST', headers, body });
  const { code } = problemSchema.parse(await reply.json());
  return [reply.status, code];
}

const day = { from: '2026-02-01T00:00:00Z', to: '2026-02-02T00:00:00Z', by: 'hour' };
const queries: readonly (readonly [Readonly<Record<string, string>>, number, ProblemCode])[] = [
  [{ ...day, from: 'NaN' }, 400, 'QUERY_MALFORMED'],
  [{ ...day, to: '1e999' }, 400, 'QUERY_MALFORMED'],
  [{ ...day, to: '2026-02-30T00:00:00Z' }, 400, 'QUERY_MALFORMED'],
  [{ ...day, to: '+275760-09-13T00:00:00Z' }, 400, 'QUERY_MALFORMED'],
  [{ ...day, from: long }, 400, 'QUERY_MALFORMED'],
  [{ ...day, to: day.from }, 400, 'QUERY_MALFORMED'],
  [{ ...day, from: day.to, to: day.from }, 400, 'QUERY_MALFORMED'],
  [{ ...day, by: 'second' }, 400, 'QUERY_MALFORMED'],
  [{ ...day, by: '__proto__' }, 400, 'QUERY_MALFORMED'],
  [{ ...day, step: '1' }, 400, 'QUERY_MALFORMED'],
  [{ from: day.from, to: day.to }, 400, 'QUERY_MALFORMED'],
  [{ ...day, unit: '' }, 400, 'QUERY_MALFORMED'],
  [{ ...day, unit: long }, 404, 'UNIT_UNKNOWN'],
  [{ ...day, unit: '__proto__' }, 404, 'UNIT_UNKNOWN'],
  [{ ...day, hall: long }, 404, 'HALL_UNKNOWN'],
  [{ ...day, from: '0001-01-01T00:00:00Z', to: '9999-12-31T00:00:00Z' }, 400, 'ENERGY_RANGE'],
];

describe('energy', () => {
  it.for(queries)('asked for with %j is refused: %i %s', async ([query, status, code]) => {
    expect(await problemOf(`/api/energy?${new URLSearchParams(query).toString()}`)).toEqual([status, code]);
  });
});

describe('the water of a unit', () => {
  it.for(['none', long, '__proto__', '%00', '..%2Fm1'])('is not asked for of %s', async (unit) => {
    for (const of of ['water', 'hand-entries'])
      expect(await problemOf(`/api/units/${unit}/${of}`)).toEqual([404, 'UNIT_UNKNOWN']);
  });
});

const typed = (changed: string): string =>
  `{"parameter":"copper","value":0.05,"unit":"mg/L","takenAt":"${now}","operator":"Ines"${changed}}`;
// Of a key that comes twice the last counts (ECMA-262, JSON.parse); 1e999 is Infinity there, and NaN is no JSON.
const bodies: readonly (readonly [string, number, ProblemCode])[] = [
  [typed(',"value":1e999'), 400, 'BODY_MALFORMED'],
  [typed(',"value":-1e999'), 400, 'BODY_MALFORMED'],
  [typed(',"value":NaN'), 400, 'REQUEST_MALFORMED'],
  [typed(',"value":"NaN"'), 400, 'BODY_MALFORMED'],
  [typed(',"value":null'), 400, 'BODY_MALFORMED'],
  [typed(',"value":1e308'), 400, 'HAND_ENTRY_RANGE'],
  [typed(',"value":-0.001'), 400, 'HAND_ENTRY_RANGE'],
  [typed(',"unit":"kPa"'), 400, 'HAND_ENTRY_UNIT_OF_MEASURE'],
  [typed(',"unit":"constructor"'), 400, 'HAND_ENTRY_UNIT_OF_MEASURE'],
  [typed(',"unit":"1e999"'), 400, 'HAND_ENTRY_UNIT_OF_MEASURE'],
  [typed(`,"unit":"${long}"`), 400, 'BODY_MALFORMED'],
  [typed(',"parameter":"__proto__"'), 404, 'HAND_ENTRY_PARAMETER'],
  [typed(`,"parameter":"${long}"`), 400, 'BODY_MALFORMED'],
  [typed(',"as":"Mo"'), 400, 'HAND_ENTRY_FORM'],
  [typed(',"as":"W"'), 400, 'BODY_MALFORMED'],
  [typed(',"sampleTemperature":1e999'), 400, 'BODY_MALFORMED'],
  [typed(',"sampleTemperature":101'), 400, 'BODY_MALFORMED'],
  [typed(',"takenAt":"yesterday"'), 400, 'BODY_MALFORMED'],
  [typed(',"takenAt":"9999-12-31T00:00:00Z"'), 400, 'HAND_ENTRY_TIME'],
  [typed(',"takenAt":"0001-01-01T00:00:00Z"'), 400, 'HAND_ENTRY_TIME'],
  [typed(',"operator":" "'), 400, 'BODY_MALFORMED'],
  [typed(`,"note":"${long}"`), 400, 'BODY_MALFORMED'],
  [typed(',"other":1'), 400, 'BODY_MALFORMED'],
  ['[]', 400, 'BODY_MALFORMED'],
  ['null', 400, 'REQUEST_MALFORMED'],
];

describe('a value typed by hand', () => {
  it.for(bodies)('is refused as %s: %i %s', async ([body, status, code]) => {
    expect(await problemOf('/api/units/m1/hand-entries', body)).toEqual([status, code]);
    expect(await app.get<{ entries: unknown[] }>('/api/units/m1/hand-entries')).toMatchObject({ entries: [] });
  });
});
