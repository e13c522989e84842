import { describe, expect, test } from 'vitest';
import { plantModes } from '../../../../simulator/src/plant/orders';
import { unitMessage } from '../../../../simulator/src/payload/messages';
import { planPayload } from '../../../../simulator/src/payload/plan-payload';
import { demoFleet, type FleetUnit } from '../../../../simulator/src/scenario/demo-fleet';

const unitOf = (id: string): FleetUnit => {
  const unit = demoFleet.find((candidate) => candidate.id === id);
  if (!unit) throw new Error(`no unit ${id}`);
  return unit;
};
const at = Date.UTC(2026, 2, 1, 2, 40, 0, 250);
const readings = new Map([
  ['supply.pressure', 80_800],
  ['supplyTank.pressure', 74_000],
  ['loop.flow', 346 / 60000],
  ['branch.r5.flow', 43.25 / 60000],
  ['water.found', 0],
  ['mode', plantModes.indexOf('running')],
]);

describe('a payload', () => {
  test('of the north hall nests, counts pipes from ambient and tanks from vacuum', () => {
    const { payload, topic } = unitMessage(unitOf('N3'), readings, 101_300, at);
    expect(topic).toBe('quillmere/north/N3/telemetry');
    expect(JSON.parse(payload)).toEqual({
      time: '2026-03-01T02:40:00.250Z',
      supply: { p: -20.5, flow: 346 },
      tank: { p: 74 },
      rope: 'dry',
      mode: 'RUN',
      racks: { r5: { flow: 43.25 } },
    });
  });

  test('of the south hall is flat, in bar, mbar and m³/h, with the time in seconds', () => {
    const { payload, topic } = unitMessage(unitOf('S1'), readings, 101_300, at);
    expect(topic).toBe('quillmere/south/S1');
    expect(JSON.parse(payload)).toEqual({
      ts: at / 1000,
      values: {
        'supply.pressure': -205,
        'supplyTank.pressure': 0.74,
        'loop.flow': 20.76,
        'water.found': false,
        mode: 'running',
        'branch.r5.flow': 2.595,
      },
    });
  });

  test('holds only what the unit has sensors for', () => {
    const points = (id: string) => planPayload(unitOf(id)).map(({ point }) => point);
    expect(points('N1')).toContain('vacuum.exhaustFlow');
    expect(points('N4')).not.toContain('vacuum.exhaustFlow');
    expect(points('N4').filter((point) => point.startsWith('plate'))).toHaveLength(16);
    expect(points('N7').filter((point) => point.startsWith('plate'))).toEqual([
      'plate.r1b.temperature',
      'plate.r1b.power',
    ]);
  });
});
