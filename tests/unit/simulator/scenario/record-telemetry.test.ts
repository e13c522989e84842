import { describe, expect, test } from 'vitest';
import type { SimulatedMessage } from '../../../../simulator/src/payload/messages';
import { demoFleet } from '../../../../simulator/src/scenario/demo-fleet';
import { FleetSimulation } from '../../../../simulator/src/scenario/fleet-simulation';
import { recordTelemetry, type Recording } from '../../../../simulator/src/scenario/record-telemetry';
import type { SettledPlants } from '../../../../simulator/src/scenario/unit-plant';

const startMs = Date.UTC(2026, 2, 1, 12);
const few = demoFleet.filter(({ id }) => ['N1', 'N2', 'N7', 'S1'].includes(id));
const record = (own: Partial<Recording>): SimulatedMessage[] => [
  ...recordTelemetry({ seed: 1, startMs, units: few, seconds: 20, ...own }),
];

describe('recorded telemetry', () => {
  test('is the same for the same seed and another for another', () => {
    const once = record({});
    expect(record({})).toEqual(once);
    expect(record({ seed: 2 })).not.toEqual(once);
  });

  test('is bit-alike twice for every plant shape, with faults of plant, sensor and site and work by command', () => {
    const units = demoFleet.filter(({ id }) => ['N8', 'N9', 'S6', 'S7'].includes(id));
    const settled: SettledPlants = new Map();
    const schedule = [
      { atS: 2, command: { fault: 'sensorNoisy', unit: 'N8', point: 'supply.pressure' } },
      { atS: 3, command: { fault: 'cutServerHose', unit: 'S7', branch: 'r2' } },
      { atS: 4, command: { fault: 'deepLow', unit: 'site' } },
      { atS: 5, command: { operation: 'openHose', unit: 'N9', branch: 'r1' } },
      { atS: 6, command: { fault: 'transferTooOften', unit: 'S6', size: 'large' } },
    ];
    const once = record({ units, settled, schedule });
    expect(record({ units, settled, schedule })).toEqual(once);
    expect(record({ units, settled })).not.toEqual(once);
  });

  test('is the same from plants that settled before, and leaves those as they were', () => {
    const settled: SettledPlants = new Map();
    const once = record({ settled });
    expect([...settled.keys()]).toEqual(few.map(({ id }) => id));
    expect(record({ settled })).toEqual(once);
    expect(record({})).toEqual(once);
  });

  test('has one object a unit and second, spread over the second', () => {
    const of = record({}).filter(({ topic }) => topic === 'quillmere/north/N2/telemetry');
    expect(of).toHaveLength(20);
    expect(new Set(record({}).map(({ sourceMs }) => sourceMs % 1000)).size).toBe(few.length);
    expect(new Date(of[0]?.sourceMs ?? 0).toISOString()).toBe(
      (JSON.parse(of[0]?.payload ?? '{}') as { time: string }).time,
    );
  });

  test('tells of both halls every five seconds', () => {
    expect(record({}).filter(({ topic }) => topic === 'quillmere/south/air')).toHaveLength(4);
  });

  test('begins with every gateway online, retained', () => {
    const first = record({}).slice(0, 3);
    expect(first.map(({ topic }) => topic)).toEqual(
      ['north-a', 'north-f', 'south-a'].map((id) => `quillmere/gateways/${id}/status`),
    );
    expect(first.every(({ retain, payload }) => retain && payload === 'online')).toBe(true);
  });

  test('refuses a schedule with a command that means nothing', () => {
    expect(() => record({ schedule: [{ atS: 1, command: { fault: 'loadStep', unit: 'N9' } }] })).toThrow(
      'COMMAND_UNIT',
    );
  });
});

describe('a lost connection', () => {
  const schedule = [{ atS: 5, command: { fault: 'connectionLost', unit: 'N1', size: 'small' } }];
  const messages = record({ schedule });
  const status = messages.filter(({ topic }) => topic === 'quillmere/gateways/north-a/status');

  test('silences every unit of the gateway, and no other', () => {
    const told = (topic: string) => messages.filter((message) => message.topic === topic).length;
    expect(told('quillmere/north/N1/telemetry')).toBe(16);
    expect(told('quillmere/north/N2/telemetry')).toBeLessThan(18);
    expect(told('quillmere/south/S1')).toBe(20);
  });

  test('of the small size is told by the last will and ends by itself', () => {
    expect(status.map(({ payload }) => payload)).toEqual(['online', 'offline', 'online']);
  });

  test('of the usual size lasts a minute, and of the large one until it is repaired', () => {
    const gone = (size: string, seconds: number, repair: boolean) => {
      const start = { atS: 1, command: { fault: 'connectionLost', unit: 'S1', size } };
      const end = { atS: 80, command: { fault: 'connectionLost', unit: 'S1', action: 'repair' } };
      return record({ seconds, units: few.slice(-1), schedule: repair ? [start, end] : [start] })
        .filter(({ topic }) => topic.endsWith('south-a/status'))
        .at(-1)?.payload;
    };
    expect(gone('usual', 50, false)).toBe('offline');
    expect(gone('usual', 70, false)).toBe('online');
    expect(gone('large', 79, false)).toBe('offline');
    expect(gone('large', 90, true)).toBe('online');
  });
});

describe('the fleet', () => {
  const fleet = new FleetSimulation({ seed: 1, startMs, units: few });

  test('starts a fault once, tells it, and repairs it once', () => {
    const order = { fault: 'slowInLeak', unit: 'N1' };
    const refusal = (text: object) => {
      const outcome = fleet.command(JSON.stringify(text));
      return outcome.ok ? null : outcome.fault.code;
    };
    expect(refusal({ ...order, action: 'repair' })).toBe('FAULT_NOT_ACTIVE');
    expect(refusal(order)).toBeNull();
    expect(refusal(order)).toBe('FAULT_ALREADY_ACTIVE');
    expect(fleet.active()).toHaveLength(1);
    expect(fleet.active()[0]).toMatchObject({ unit: 'N1', id: 'slowInLeak', branch: null, repaired: false });
    expect(fleet.active()[0]?.keys).toMatchObject({ size: 'usual' });
    expect(refusal({ ...order, action: 'repair' })).toBeNull();
    for (let slot = 0; slot < 2 * few.length; slot += 1) fleet.next();
    expect(fleet.active()).toEqual([]);
  });

  test('leaves out seconds without losing its order', () => {
    const before = fleet.nextMs;
    fleet.skipSeconds(7);
    expect(fleet.nextMs - before).toBe(7000);
  });
});
