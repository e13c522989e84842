import { describe, expect, it } from 'vitest';
import type { AlarmRecord } from '../../../../../backend/src/evaluation/pipeline/outputs';
import type { CompiledHall } from '../../../../../backend/src/evaluation/site/compiled-site';
import { besidesOf } from '../../../../../backend/src/runner/views/besides-of';
import type { Scene } from '../../../../../backend/src/runner/views/scene';

const record = (owner: string, entry: string, more: Partial<AlarmRecord> = {}): AlarmRecord =>
  ({
    ...{ alarm: `${owner}:${entry}`, entry, unit: null, hall: null, priority: 3, state: 'acknowledged', active: true },
    ...{ foldedUnder: null, sinceMs: 0, stateSinceMs: 0, where: null, acknowledgedBy: 'Ada', acknowledgedAtMs: 1 },
    ...more,
  }) as AlarmRecord;
const site = { gateways: [{ id: 'g1', units: [0, 2] }], loops: [{ id: 'l2', units: [2, 3] }] };
const sceneOf = (records: readonly AlarmRecord[]): Scene =>
  ({
    pipeline: { site },
    alarms: () => records.map((one) => ({ record: one, recorded: true })),
    textsOf: ({ alarm }: AlarmRecord) => ({ title: `title of ${alarm}` }),
  }) as unknown as Scene;
const hall = (id: string, units: readonly number[]): CompiledHall => ({ id, units }) as unknown as CompiledHall;
const [north, south] = [hall('north', [0, 1]), hall('south', [2, 3])];

describe('what stands in a hall and is of no single unit', () => {
  it('stays told when it was acknowledged, with its state and by whom', () => {
    expect(besidesOf(sceneOf([record('north', 'AMB-1', { hall: 'north' })]), north)).toEqual([
      {
        ...{ id: 'north:AMB-1', title: 'title of north:AMB-1', priority: 3, state: 'acknowledged', where: null },
        ...{ hall: 'north', since: '1970-01-01T00:00:00.000Z', acknowledgedBy: 'Ada' },
      },
    ]);
  });

  it('is what reaches into the hall: of a gateway or loop with a unit there, and of the program', () => {
    const scene = sceneOf([
      record('g1', 'COM-1', { hall: 'north', priority: 2 }),
      record('l2', 'FLOW-1', { hall: 'south' }),
      record('', 'SYS-1'),
      record('south', 'AMB-1', { hall: 'south', sinceMs: 1 }),
      record('m1', 'AIR-1', { unit: 'm1', hall: 'south' }),
    ]);
    const ids = (of: CompiledHall): readonly string[] => besidesOf(scene, of).map(({ id }) => id);
    expect(ids(north)).toEqual(['g1:COM-1', ':SYS-1']);
    expect(ids(south)).toEqual(['g1:COM-1', ':SYS-1', 'l2:FLOW-1', 'south:AMB-1']);
  });

  it('is of the hall that is looked at, where a gateway or a loop has units in two', () => {
    const scene = sceneOf([record('g1', 'COM-1', { hall: 'north' }), record('south', 'AMB-1', { hall: 'south' })]);
    expect(besidesOf(scene, south).map(({ id, hall: of }) => [id, of])).toEqual([
      ['g1:COM-1', 'south'],
      ['south:AMB-1', 'south'],
    ]);
  });

  it('is told of another hall only while it calls', () => {
    const of = (state: AlarmRecord['state']) =>
      besidesOf(sceneOf([record('south', 'AMB-1', { hall: 'south', state })]), north);
    expect(of('unacknowledged')).toHaveLength(1);
    expect(of('acknowledged')).toEqual([]);
  });
});
