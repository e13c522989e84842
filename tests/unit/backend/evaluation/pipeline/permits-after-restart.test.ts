import { describe, expect, it } from 'vitest';
import type { PermitChange, PermitRecord } from '../../../../../backend/src/evaluation/pipeline/permit-record';
import { Plant, plantSite } from './plant';
import { restartedPlant, who } from './set-aside-plant';

const lpm = 1 / 60_000;
const site = plantSite({
  points: { 'vacuum.exhaustFlow': { path: 'exhaust', unit: 'free L/min', accuracy: '3 % of reading' } },
});

/** A permit for 30 free L/min whose time was over after a minute; 32 come in. */
function overdue(): Plant {
  const plant = new Plant(site);
  Object.assign(plant.m1, { exhaust: 2 });
  plant.run(40);
  const wanted = { kind: 'openPermit', unit: 'm1', branch: 'r4', expectedInLeakM3PerS: 30 * lpm, ...who } as const;
  plant.pipeline.actOnPermit({ ...wanted, untilMs: plant.nowMs + 60_000 }, plant.nowMs);
  Object.assign(plant.m1, { exhaust: 32 });
  return plant.run(70);
}
/** Records as the journal gives them back. */
const stored = (records: readonly PermitRecord[]): readonly PermitRecord[] =>
  JSON.parse(JSON.stringify(records)) as PermitRecord[];
/** That of its newest row. */
const recorded = (changes: readonly PermitChange[]): readonly PermitRecord[] =>
  stored(changes.slice(-1).map(({ permit }) => permit));

function restarted(before: Plant, records: readonly PermitRecord[], downS: number): Plant {
  const after = restartedPlant(before, downS, 'journal');
  Object.assign(after.m1, { exhaust: 32 });
  after.pipeline.restorePermits(records);
  return after.run(30);
}

describe('a permit that was overdue when the program ended', () => {
  it('is not told to be overdue anew at each restart, and allows no air any longer', () => {
    const before = overdue();
    const changes = before.pipeline.takePermitChanges();
    expect(changes.map(({ what }) => what)).toEqual(['overdue']);
    let records = recorded(changes);
    for (const downS of [30, 60]) {
      const after = restarted(before, records, downS);
      expect(after.pipeline.takePermitChanges()).toEqual([]);
      expect(after.pipeline.detailOf('m1:PERMIT-1')).toContain('30 free L/min more than the permit');
      records = stored(after.pipeline.permits());
    }
  });

  it('is moved with a clock that was set back, and not told anew either', () => {
    const before = overdue();
    const after = restarted(before, recorded(before.pipeline.takePermitChanges()), -3600);
    expect(after.pipeline.takePermitChanges().map(({ what }) => what)).toEqual(['moved']);
    expect(after.standing('PERMIT-1')?.active).toBe(true);
  });

  it('is told once where its time ran out while the program was down', () => {
    const before = overdue();
    const [record] = recorded(before.pipeline.takePermitChanges());
    if (record === undefined) throw new Error('nothing was told');
    const untold = Object.fromEntries(Object.entries(record).filter(([key]) => key !== 'isOverdueTold'));
    const after = restarted(before, [untold as unknown as PermitRecord], 30);
    expect(after.pipeline.takePermitChanges().map(({ what }) => what)).toEqual(['overdue']);
  });
});
