import { afterEach, describe, expect, it } from 'vitest';
import type { AlarmRecord } from '../../../../../backend/src/evaluation/pipeline/outputs';
import type { CompiledHall } from '../../../../../backend/src/evaluation/site/compiled-site';
import { countBeside } from '../../../../../backend/src/runner/views/besides-of';
import { heldAside } from '../../../../../backend/src/runner/views/held-aside';
import type { PictureScene } from '../../../../../backend/src/runner/views/scene';
import { PastPlant } from '../past/past-plant';

let past: PastPlant | null = null;
afterEach(() => {
  past?.close();
  past = null;
});

const record = (alarm: string, more: Partial<AlarmRecord>): AlarmRecord =>
  ({
    alarm,
    entry: alarm.split(':')[1],
    unit: null,
    hall: null,
    active: true,
    mode: 'shelved',
    ...more,
  }) as AlarmRecord;
const sceneOf = (records: readonly AlarmRecord[]): PictureScene =>
  ({
    pipeline: { site: { gateways: [{ id: 'g1', units: [0] }], loops: [] } },
    setAside: () => records.map((one) => ({ record: one, recorded: true })),
  }) as unknown as PictureScene;

describe('what is set aside while its condition holds', () => {
  it('is counted in the line of its unit, live and of a past second, and only as long as it is set aside', async () => {
    past = new PastPlant();
    past.run(40);
    past.plant.m1.pTank = 100;
    past.run(30);
    expect(past.live().unit.line.setAsideHolding).toBeUndefined();
    for (const { id } of past.live().unit.alarms) past.shelve(id);
    past.run(2);
    const { hall, unit, atMs } = past.live();
    expect(unit.alarms).toEqual([]);
    expect(unit.line.setAsideHolding).toBeGreaterThan(0);
    expect(hall.loops.map((line) => line.setAsideHolding)).toEqual([unit.line.setAsideHolding, undefined]);
    const then = await past.run(30).desk.unit('m1', atMs);
    expect(then.ok && then.value.frame.line.setAsideHolding).toBe(unit.line.setAsideHolding);
  });

  it('is neither what logic suppresses nor what is shelved while nothing is wrong', () => {
    const held = record('m1:MARGIN-1', {});
    const others = [record('m1:FLOW-1', { mode: 'suppressedByDesign' }), record('m1:AIR-1', { active: false })];
    expect(heldAside(sceneOf([held, ...others]))).toEqual([held]);
    expect(heldAside(sceneOf([record('m1:WATER-1', { mode: 'outOfService' })]))).toHaveLength(1);
  });

  it('is counted for a hall where it is of its gateway, its room or the program, and not of a unit', () => {
    const records = [
      record('g1:COM-1', { hall: 'south' }),
      record('north:AMB-1', { hall: 'north' }),
      record(':SYS-1', {}),
      record('south:AMB-1', { hall: 'south' }),
      record('m1:AIR-1', { unit: 'm1', hall: 'north' }),
    ];
    const north = { id: 'north', units: [0] } as unknown as CompiledHall;
    expect(countBeside(sceneOf(records), north, records)).toBe(3);
  });
});
