import { describe, expect, it } from 'vitest';
import * as folding from '../../../../../backend/src/evaluation/alarm-rules/folding';
import { unitEntryIds } from '../../../../../backend/src/evaluation/alarm-rules/entry-ids';
import { RuleBench } from '../alarm-rules/rule-bench';
import { Plant, plantSite } from './plant';

const who = { operator: 'Ada', station: 'desk', comment: '' };
const days = 2;
const command = { 'vacuum.command': { path: 'vacuumCommand' } };

/** One machine has tripped and its standby carries. */
function tripped(machine: 'pump' | 'vacuum'): RuleBench {
  const values = {
    ...{ 'vacuum.command': 1, 'pump.command': 1, 'vacuum.standby.running': 0, 'pump.standby.running': 0 },
    ...{ timeToEmpty: 4 * 3600, supplyTankRate: 0, openingsCarried: 3, supplySetPointError: 0 },
  };
  const bench = new RuleBench({ also: Object.keys(values), values: { ...values, 'pump.speed': 1 } });
  bench.mode('running').run(60).set(`${machine}.running`, 0);
  if (machine === 'pump') bench.set('pump.standby.running', 1);
  return bench.run(10);
}

/** The trip was acknowledged, and has stood for days. */
function known(machine: 'pump' | 'vacuum'): RuleBench {
  const bench = tripped(machine);
  const trip = machine === 'pump' ? 'PUMP-1' : 'VSRC-1';
  bench.pipeline.book.acknowledge(`m1:${trip}`, who, bench.nowMs);
  bench.hours(days * 24, 600).run(60);
  expect(bench.alarm(trip)).toMatchObject({ active: true, state: 'acknowledged' });
  return bench;
}

const fallingTank = (bench: RuleBench): RuleBench => bench.set('timeToEmpty', 500).run(30);
const weakReserve = (bench: RuleBench): RuleBench => bench.set('openingsCarried', 0.2).run(90);
const standbyStarts = (bench: RuleBench): RuleBench => bench.set('vacuum.standby.running', 1).run(20);

describe('what begins days after the trip of a machine that was acknowledged', () => {
  it.each([
    ['TANK-1', 'pump', fallingTank],
    ['AIR-3', 'vacuum', weakReserve],
    ['VSRC-2', 'vacuum', standbyStarts],
  ] as const)('stands for itself, and follows from it within minutes of it: %s', (entry, machine, begins) => {
    expect(begins(tripped(machine)).alarm(entry)).toMatchObject({
      active: true,
      foldedUnder: machine === 'pump' ? 'm1:PUMP-1' : 'm1:VSRC-1',
    });
    expect(begins(known(machine)).alarm(entry)).toMatchObject({ active: true, foldedUnder: null });
  });

  it('stands for itself too where it is a supply that has become hot', () => {
    const plant = new Plant(plantSite({ units: ['m1'], points: command }));
    Object.assign(plant.m1, { vacuumCommand: true });
    Object.assign(plant.run(60).m1, { vacuumRunning: false });
    plant.run(10);
    plant.pipeline.act({ kind: 'acknowledge', alarm: 'm1:VSRC-1', ...who }, plant.nowMs);
    plant.run(600);
    Object.assign(plant.m1, { tSupply: 39 });
    plant.run(20);
    expect(plant.standing('VSRC-1')).toMatchObject({ active: true, state: 'acknowledged' });
    expect(plant.standing('TSUP-1')).toMatchObject({ active: true, foldedUnder: null });
  });
});

describe('a level that goes out of its range', () => {
  const outOfRange = (afterS: number): string | null | undefined => {
    const level = { path: 'levelSeparator', unit: 'm', accuracy: '±3 mm', range: '0 to 1 m' };
    const plant = new Plant(plantSite({ units: ['m1'], points: { 'separator.level': level, ...command } }));
    Object.assign(plant.m1, { vacuumCommand: true });
    Object.assign(plant.run(60).m1, { vacuumRunning: false });
    plant.run(10);
    plant.pipeline.act({ kind: 'acknowledge', alarm: 'm1:VSRC-1', ...who }, plant.nowMs);
    plant.run(afterS);
    Object.assign(plant.m1, { levelSeparator: 1.4 });
    plant.run(20);
    return plant.pipeline.standing().find(({ where }) => where === 'separator.level')?.foldedUnder;
  };

  it('follows from a trip that was acknowledged within the hour, and is a sensor to look at after it', () => {
    expect(outOfRange(60)).toBe('m1:VSRC-1');
    expect(outOfRange(3700)).toBeNull();
  });
});

describe('the tables of consequences', () => {
  it('name twice only what hides all along while it stands, and for minutes after: dead water, and the lower step', () => {
    const twice = unitEntryIds.flatMap((id) =>
      (folding.foldsUnder[id] ?? [])
        .filter((over) => folding.foldsUnderEarlier[id]?.includes(over) === true)
        .map((over) => `${id} under ${over}`),
    );
    expect(twice).toEqual(['FLOW-1 under FLOW-2', 'TANK-3 under TANK-1', 'TSUP-1 under FLOW-2']);
  });

  it('bound in time only what they fold', () => {
    for (const id of unitEntryIds)
      for (const over of folding.foldsUntilKnown[id] ?? []) expect(folding.foldsUnder[id], id).toContain(over);
  });
});
