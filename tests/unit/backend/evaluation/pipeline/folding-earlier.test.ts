import { describe, expect, it } from 'vitest';
import { Plant, plantSite } from './plant';

const parent = (plant: Plant, entry: string): string | null | undefined => plant.standing(entry)?.foldedUnder;

/** The flow was lost for some seconds and is back; what stood hot comes round. */
function flowCameBack(): Plant {
  const plant = new Plant(plantSite({ units: ['m1'] })).run(60);
  Object.assign(plant.m1, { flow: 0 });
  plant.run(8);
  Object.assign(plant.m1, { flow: 346 });
  plant.run(10);
  expect(plant.standing('FLOW-2')).toMatchObject({ active: false, state: 'returnedUnacknowledged' });
  Object.assign(plant.m1, { tSupply: 39 });
  return plant.run(20);
}

describe('what follows from an alarm that is over', () => {
  it('folds under it for five minutes, and then stands for itself', () => {
    const plant = flowCameBack();
    expect(parent(plant, 'TSUP-1')).toBe('m1:FLOW-2');
    plant.run(250);
    expect(parent(plant, 'TSUP-1')).toBe('m1:FLOW-2');
    plant.run(40);
    expect(parent(plant, 'TSUP-1')).toBeNull();
  });

  it('stands for itself as soon as that one was acknowledged away', () => {
    const plant = flowCameBack();
    plant.pipeline.act(
      { kind: 'acknowledge', alarm: 'm1:FLOW-2', operator: 'Ada', station: 'desk', comment: '' },
      plant.nowMs,
    );
    expect(parent(plant, 'TSUP-1')).toBeNull();
  });

  it('is no consequence where it began before', () => {
    const plant = new Plant(plantSite({ units: ['m1'] })).run(60);
    Object.assign(plant.m1, { tSupply: 39 });
    plant.run(40);
    Object.assign(plant.m1, { flow: 0 });
    plant.run(8);
    Object.assign(plant.m1, { flow: 346 });
    plant.run(20);
    expect(parent(plant, 'TSUP-1')).toBeNull();
  });
});
