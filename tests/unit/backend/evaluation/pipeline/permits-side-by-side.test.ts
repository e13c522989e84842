import { describe, expect, it } from 'vitest';
import type { OpenPermit, PermitRecord } from '../../../../../backend/src/evaluation/pipeline/permit-record';
import { Plant, plantSite } from './plant';

const lpm = 1 / 60_000;
const hour = 3600_000;
const meter = { 'vacuum.exhaustFlow': { path: 'exhaust', unit: 'free L/min', accuracy: '3 % of reading' } };
/** What racks tell on most sites: no flow and no pressure of their own, but whether they are valved off. */
const usualRack = {
  'branch.*.flow': null,
  'branch.*.return.pressure': null,
  'branch.*.isolated': { path: 'racks.{branch}.isolated' },
};

function plantWith(points: object = {}, modePoint = false): Plant {
  const plant = new Plant(plantSite({ points: { ...meter, ...points }, modePoint }));
  isolate(plant, 'r1', false);
  isolate(plant, 'r2', false);
  isolate(plant, 'r3', false);
  isolate(plant, 'r4', false);
  return exhaust(plant, 2).run(40);
}
const exhaust = (plant: Plant, freeLpm: number): Plant => {
  Object.assign(plant.m1, { exhaust: freeLpm });
  return plant;
};
const isolate = (plant: Plant, rack: string, isolated: boolean): void =>
  void Object.assign(plant.m1.racks[rack] ?? {}, { isolated });

function open(plant: Plant, branch: string | null, more: Partial<OpenPermit> = {}): PermitRecord {
  const outcome = plant.pipeline.actOnPermit(
    {
      kind: 'openPermit',
      unit: 'm1',
      branch,
      untilMs: plant.nowMs + hour,
      expectedInLeakM3PerS: 30 * lpm,
      operator: 'Ada',
      station: 's',
      comment: '',
      ...more,
    },
    plant.nowMs,
  );
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.change.permit;
}
const close = (plant: Plant, { id }: PermitRecord): void =>
  void plant.pipeline.actOnPermit(
    { kind: 'closePermit', permit: id, operator: 'Bo', station: 's', comment: '' },
    plant.nowMs,
  );
const openOnes = (plant: Plant): (string | null)[] => plant.pipeline.permits().map(({ branch }) => branch);

describe('a permit that is opened while another of the unit is open', () => {
  /** The second was opened while the hose of the first was off; then the first was closed. */
  const second = (): Plant => {
    const plant = plantWith(usualRack);
    const first = open(plant, 'r4');
    exhaust(plant, 32).run(60);
    open(plant, 'r1');
    plant.run(30);
    exhaust(plant, 2).run(20);
    close(plant, first);
    return plant.run(60);
  };

  it('compares with what stood before both: a second opening is told when the first permit is closed', () => {
    const plant = second();
    expect(plant.pipeline.permits()[0]?.baseline.gasLoadM3PerS).toBeCloseTo(2 * lpm, 9);
    exhaust(plant, 32).run(60);
    expect(plant.entries()).toEqual([]);
    exhaust(plant, 69).run(10);
    expect(plant.entries()).toEqual(expect.arrayContaining(['AIR-1', 'PERMIT-1']));
    expect(plant.pipeline.detailOf('m1:PERMIT-1')).toContain('37 free L/min more than the permit');
  });

  it('does not take the air of the other for its own opening: it waits for its own, and closes after that', () => {
    const plant = second().run(300);
    expect(openOnes(plant)).toEqual(['r1']);
    exhaust(plant, 32).run(30);
    exhaust(plant, 2).run(130);
    expect(openOnes(plant)).toEqual([]);
  });

  it('sees its own opening on top of the other', () => {
    const plant = plantWith(usualRack);
    open(plant, 'r4');
    exhaust(plant, 32).run(30);
    open(plant, 'r1');
    plant.run(10);
    exhaust(plant, 62).run(30);
    exhaust(plant, 2).run(130);
    expect(openOnes(plant)).toEqual([]);
  });

  it('has no baseline where nothing was known before the first', () => {
    const plant = plantWith(usualRack);
    plant.m1.vacuumRunning = false;
    Object.assign(plant.m1, { exhaust: null, vacuumSpeed: null });
    plant.run(60);
    const first = open(plant, 'r4');
    exhaust(plant, 32).run(30);
    expect([first, open(plant, 'r1')].map(({ baseline }) => baseline.gasLoadM3PerS)).toEqual([null, null]);
  });
});

describe('a permit for a branch that tells whether it is valved off', () => {
  it('stays open while its branch is, though gas load and level are back, and says what it waited for', () => {
    const plant = plantWith(usualRack);
    Object.assign(plant.m1.racks['r4'] ?? {}, { power: 0 });
    plant.run(5);
    expect(open(plant, 'r4').waitsFor).toEqual(['gasLoad', 'level', 'isolation']);
    isolate(plant, 'r4', true);
    exhaust(plant, 20).run(10);
    exhaust(plant, 2).run(300);
    expect(openOnes(plant)).toEqual(['r4']);
    isolate(plant, 'r4', false);
    plant.run(30);
    exhaust(plant, 32).run(20);
    expect(plant.entries()).toEqual([]);
    exhaust(plant, 2).run(130);
    expect(openOnes(plant)).toEqual([]);
    expect(plant.pipeline.takePermitChanges().map(({ comment }) => comment)).toEqual([
      'gas load and level are back where they were before the work; the branch is not isolated',
    ]);
  });

  it('closes behind its valves where it was valved off when the work began', () => {
    const plant = plantWith(usualRack);
    isolate(plant, 'r4', true);
    plant.run(10);
    expect(open(plant, 'r4').waitsFor).toEqual(['gasLoad', 'level']);
    exhaust(plant, 20).run(10);
    exhaust(plant, 2).run(130);
    expect(openOnes(plant)).toEqual([]);
    expect(plant.pipeline.takePermitChanges()[0]?.comment).toBe(
      'gas load and level are back where they were before the work',
    );
  });

  it('does not close where that was the last that it told', () => {
    const plant = plantWith(usualRack);
    open(plant, 'r4');
    isolate(plant, 'r4', true);
    exhaust(plant, 20).run(10);
    Reflect.deleteProperty(plant.m1.racks['r4'] ?? {}, 'isolated');
    exhaust(plant, 2).run(300);
    expect(openOnes(plant)).toEqual(['r4']);
  });
});

describe('a permit for the whole loop beside an overdue one for a branch', () => {
  it('still has a loop that is vented told as an alert, and the overdue one alone as an alarm', () => {
    const plant = plantWith({}, true);
    open(plant, 'r4', { untilMs: plant.nowMs + 120_000 });
    open(plant, null, { untilMs: plant.nowMs + 8 * hour });
    Object.assign(plant.m1, { mode: 'vented', pumpRunning: false, flow: 0, pTank: 101.3, pSeparator: 101.3 });
    plant.run(140);
    expect(plant.entries()).toEqual(['PERMIT-1']);
    const alert = plant.pipeline.alerts().find(({ entry }) => entry === 'MARGIN-2');
    expect(alert?.detail).toMatch(/^Vented, not protected: .* A permit is open until 08:00 UTC\./);
  });

  it('is over by its own time', () => {
    const plant = plantWith({}, true);
    open(plant, 'r4');
    open(plant, null, { untilMs: plant.nowMs + 60_000 });
    Object.assign(plant.m1, { mode: 'vented', pumpRunning: false, flow: 0, pTank: 101.3, pSeparator: 101.3 });
    expect(plant.run(40).standing('MARGIN-2')).toBeUndefined();
    expect(plant.run(40).standing('MARGIN-2')?.active).toBe(true);
  });
});
