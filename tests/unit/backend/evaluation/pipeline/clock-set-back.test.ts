import { describe, expect, it } from 'vitest';
import type { PermitRecord } from '../../../../../backend/src/evaluation/pipeline/permit-record';
import { Plant, plantSite } from './plant';
import { annunciations, putAside, restartedPlant, who, type Reached } from './set-aside-plant';

const again = plantSite({ unit: { limits: { 'WATER-1': { reAlarmAfter: '10 min' } } } });

/** Water is found; everything else is at rest. */
function wet(site = again): Plant {
  const plant = new Plant(site).run(10);
  plant.m1.water = true;
  return plant.run(10);
}

/** A new program on the same wet plant, its clock so many seconds after (before) the end of the old one. */
function wetAfter(before: Plant, downS: number, reached: Reached): Plant {
  const after = restartedPlant(before, downS, reached);
  after.m1.water = true;
  return after;
}

const knowing = ['journal', 'memory'] as const;

/** An hour behind, so that the shelving itself lies ahead; and by less than it had run. */
const setBacks = [-3600, -300] as const;
const cases = knowing.flatMap((reached) => setBacks.map((downS) => [downS, reached] as const));

describe('a shelving over a restart after which the clock is behind', () => {
  it.each(cases)('by %i s goes on with the time that it had left, as the %s tells it', (downS, reached) => {
    const plant = wet();
    putAside(plant, 'm1:WATER-1', { kind: 'shelve', forMs: 600_000 });
    plant.run(400);
    const after = wetAfter(plant, downS, reached).run(2);
    const left = ((after.pipeline.setAside()[0]?.modeUntilMs ?? Number.NaN) - after.nowMs) / 1000;
    expect(left).toBeGreaterThan(190);
    expect(left).toBeLessThanOrEqual(200);
    after.run(185);
    expect(after.entries()).toEqual([]);
    after.run(20);
    expect(after.standing('WATER-1')).toMatchObject({ state: 'unacknowledged' });
    expect(annunciations(after, 'WATER-1')).toBe(1);
  });

  it('is not made longer by one restart after the other', () => {
    let plant = wet();
    putAside(plant, 'm1:WATER-1', { kind: 'shelve', forMs: 600_000 });
    let ran = 0;
    for (; ran < 1200 && plant.pipeline.setAside().length > 0; ran += 100)
      plant = wetAfter(plant.run(100), -1000, 'journal').run(1);
    expect(ran).toBeLessThanOrEqual(600);
  });

  it('leaves the planned end of an alarm out of service where the person put it', () => {
    const plant = wet();
    const plannedEndMs = plant.nowMs + 3_600_000;
    putAside(plant, 'm1:WATER-1', { kind: 'takeOut', interimMeasures: 'a round every hour', plannedEndMs });
    plant.run(400);
    const after = wetAfter(plant, -300, 'journal').run(2);
    expect(after.pipeline.setAside()).toMatchObject([{ mode: 'outOfService', modeUntilMs: plannedEndMs }]);
  });
});

describe('what stands over a restart after which the clock is behind', () => {
  it.each(cases)('by %i s is as old as it was, as the %s tells it', (downS, reached) => {
    const plant = wet();
    plant.pipeline.act({ kind: 'acknowledge', alarm: 'm1:WATER-1', ...who }, plant.nowMs);
    plant.run(400);
    const before = plant.standing('WATER-1');
    const after = wetAfter(plant, downS, reached).run(1).standing('WATER-1');
    expect(after).toMatchObject({ state: 'acknowledged' });
    for (const time of ['sinceMs', 'stateSinceMs', 'acknowledgedAtMs'] as const) {
      const movedS = ((after?.[time] ?? Number.NaN) - (before?.[time] ?? Number.NaN)) / 1000;
      expect(movedS).toBeGreaterThanOrEqual(downS);
      expect(movedS).toBeLessThanOrEqual(downS + 1);
    }
  });

  it.each(cases)('by %i s is told anew when its time is over and no later, as the %s tells it', (downS, reached) => {
    const plant = wet();
    plant.pipeline.act({ kind: 'acknowledge', alarm: 'm1:WATER-1', ...who }, plant.nowMs);
    plant.run(400);
    const after = wetAfter(plant, downS, reached).run(190);
    expect(after.standing('WATER-1')).toMatchObject({ state: 'acknowledged' });
    after.run(20);
    expect(after.standing('WATER-1')).toMatchObject({ state: 'unacknowledged' });
    expect(annunciations(after, 'WATER-1')).toBe(1);
  });

  it.each(setBacks)(
    'by %i s lets its off-delay run from then on, neither shorter nor until the old time comes',
    (downS) => {
      // FLOW-2 clears five seconds after the flow is back.
      const plant = new Plant(plantSite()).run(40);
      plant.m1.flow = 100;
      plant.run(10);
      expect(plant.entries()).toContain('FLOW-2');
      plant.m1.flow = 346;
      plant.run(4);
      const after = restartedPlant(plant, downS, 'journal').run(4);
      expect(after.standing('FLOW-2')).toMatchObject({ active: true });
      after.run(4);
      expect(after.standing('FLOW-2')).toMatchObject({ active: false });
    },
  );

  it('by nothing, or ahead, keeps its times', () => {
    const plant = wet();
    plant.run(400);
    const before = plant.standing('WATER-1');
    expect(wetAfter(plant, 30, 'journal').run(5).standing('WATER-1')).toEqual(before);
    expect(wetAfter(plant, 3000, 'memory').run(5).standing('WATER-1')).toEqual(before);
  });
});

describe('a permit over a restart after which the clock is behind', () => {
  const lastsMs = 1_800_000;
  /** Opened for half an hour, of which 400 s have gone; then a new program that took it back from the journal. */
  function permitted(): Plant {
    const plant = new Plant(plantSite()).run(10);
    const wanted = { kind: 'openPermit', unit: 'm1', branch: 'r4', expectedInLeakM3PerS: 0.0005, ...who } as const;
    plant.pipeline.actOnPermit({ ...wanted, untilMs: plant.nowMs + lastsMs }, plant.nowMs);
    return plant.run(400);
  }
  const restarted = (before: Plant, downS: number, records = before.pipeline.permits()): Plant => {
    const after = restartedPlant(before, downS, 'journal');
    after.pipeline.restorePermits(JSON.parse(JSON.stringify(records)) as PermitRecord[]);
    return after;
  };
  const left = (plant: Plant): number => ((plant.pipeline.permits()[0]?.untilMs ?? Number.NaN) - plant.nowMs) / 1000;

  it.each(setBacks)('by %i s ends when it was to end, and that is on record', (downS) => {
    const after = restarted(permitted(), downS).run(2);
    expect(left(after)).toBeGreaterThan(1390);
    expect(left(after)).toBeLessThanOrEqual(1400);
    const [moved, ...more] = after.pipeline.takePermitChanges();
    expect(more).toEqual([]);
    expect(moved).toMatchObject({ what: 'moved', actor: null, permit: after.pipeline.permits()[0] });
    const again = restarted(after, 30, moved === undefined ? [] : [moved.permit]).run(2);
    expect(left(again)).toBeLessThanOrEqual(1400);
    again.run(1400);
    expect(again.pipeline.takePermitChanges().map(({ what }) => what)).toContain('overdue');
  });

  it('by nothing keeps its times', () => {
    const before = permitted();
    const after = restarted(before, 30).run(2);
    expect(after.pipeline.permits()).toEqual(before.pipeline.permits());
    expect(after.pipeline.takePermitChanges()).toEqual([]);
  });
});
