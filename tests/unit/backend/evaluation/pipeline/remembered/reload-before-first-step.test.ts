import { expect, it } from 'vitest';
import { createPipeline } from '../../../../../../backend/src/evaluation/pipeline/create-pipeline';
import { Plant, plantSite } from '../plant';

it('what was learnt is kept where another site file comes before the first step', () => {
  const before = new Plant(plantSite()).run(120);
  const after = new Plant(plantSite());
  after.second = before.second + 5;
  after.pipeline = createPipeline(after.site, { clock: 'source', startMs: Number.NaN });
  expect(after.pipeline.recall(before.pipeline.learnt(before.nowMs)).ok).toBe(true);
  const minutesKnown = (plant: Plant): number =>
    plant.pipeline.hourTrail(0, plant.nowMs).lowestPa.filter((lowest) => lowest !== null).length;
  after.pipeline = after.pipeline.goOn(plantSite({ units: ['m1', 'm2'] }), Number.NaN);
  after.pipeline.advance(after.nowMs);
  expect(minutesKnown(before)).toBeGreaterThan(1);
  expect(minutesKnown(after)).toBe(minutesKnown(before));
});
