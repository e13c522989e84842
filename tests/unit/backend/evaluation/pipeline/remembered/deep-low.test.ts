import { describe, expect, it } from 'vitest';
import { fromLearnt } from '../../../../../../backend/src/evaluation/pipeline/remembered/memory-image';
import { Plant, plantSite } from '../plant';
import { restartedPlant } from '../set-aside-plant';

const units = ['m1', 'm2', 'm3', 'm4'];
/** So far it falls to just above the limit of the margins, kPa; and then so much more. */
const fall = 2.6;
const more = 0.4;
/** A tank whose set point is absolute: 5.1 kPa of margin beyond its uncertainty are left at 98.7 kPa of ambient; the limit is 5 kPa. */
const pTank = 78.2;

const withTanks = (plant: Plant): Plant => {
  for (const id of units) Object.assign(plant.telemetry[id] ?? {}, { pTank });
  return plant;
};

/** In half an hour, in place of six: the mean of hours lags behind it all the same. */
function fallen(): Plant {
  const plant = withTanks(new Plant(plantSite({ units })));
  return plant.run(1800, (second) => (plant.air.p = 101.3 - (fall * second) / 1800));
}

function fallsOn(plant: Plant): Plant {
  plant.air.p = 101.3 - fall;
  withTanks(plant).run(30);
  return plant.run(120, (second) => (plant.air.p = 101.3 - fall - Math.min(more, 0.01 * second)));
}

const told = (plant: Plant): readonly (string | null)[] =>
  plant.pipeline
    .standing()
    .filter(({ entry, active }) => entry === 'MARGIN-1' && active)
    .map(({ foldedUnder }) => foldedUnder);

const [first, ...folded] = [null, expect.any(String), expect.any(String), expect.any(String)] as const;

describe('a deep low with a restart in the midst of it', () => {
  const before = fallen();

  it('is told once for all units of the hall, the others under the first, as without a restart', () => {
    for (const downS of [5, 1800])
      expect(told(fallsOn(restartedPlant(before, downS, 'memory')))).toEqual([first, ...folded]);
  });

  it('is not judged by means of an hour and more ago: the weather since is not known', () => {
    expect(told(fallsOn(restartedPlant(before, 3660, 'memory')))).toEqual([null, null, null, null]);
  });

  it('goes on in the hall of the same name, and by no means of an image that knew no halls', () => {
    const learnt = before.pipeline.learnt(before.nowMs);
    const head = JSON.parse(learnt.head) as { halls: string[]; hallColumns: [string, number][] };
    expect(head.halls).toEqual(['h']);
    const cells = head.hallColumns.reduce((sum, [, count]) => sum + count, 0);
    expect(cells).toBeGreaterThan(0);
    // What is undefined is not written.
    const old = JSON.stringify({ ...head, halls: undefined, hallColumns: undefined, form: 2 });
    const read = fromLearnt({ head: old, numbers: learnt.numbers.subarray(0, learnt.numbers.length - cells) });
    expect(read).toMatchObject({ ok: true, value: { units, halls: [], hallColumns: [] } });
    expect(fromLearnt({ head: old, numbers: learnt.numbers })).toMatchObject({ ok: false });

    const other = restartedPlant(before, 5);
    const moved = { head: JSON.stringify({ ...head, halls: ['elsewhere'] }), numbers: learnt.numbers };
    expect(other.pipeline.recall(moved).ok).toBe(true);
    expect(told(fallsOn(other))).toEqual([null, null, null, null]);
    expect(told(fallsOn(before))).toEqual([first, ...folded]);
  });
});
