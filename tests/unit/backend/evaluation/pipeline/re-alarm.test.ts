import { describe, expect, it } from 'vitest';
import { Plant, plantSite } from './plant';
import { annunciations, putAside, restartedPlant, who } from './set-aside-plant';

const again = plantSite({ unit: { limits: { 'WATER-1': { reAlarmAfter: '10 min' } } } });

/** Water is found and acknowledged a few seconds later. */
function acknowledged(site = again): Plant {
  const plant = new Plant(site).run(10);
  plant.m1.water = true;
  plant.run(10);
  expect(plant.pipeline.act({ kind: 'acknowledge', alarm: 'm1:WATER-1', ...who }, plant.nowMs)).toMatchObject({
    ok: true,
  });
  return plant;
}

describe('an alarm that is set to be told anew', () => {
  it('is told once more, so long after it was acknowledged and no sooner, and waits for the next acknowledgement', () => {
    const plant = acknowledged().run(598);
    expect(plant.standing('WATER-1')).toMatchObject({ state: 'acknowledged' });
    plant.run(3);
    expect(plant.standing('WATER-1')).toMatchObject({ state: 'unacknowledged', acknowledgedBy: null });
    expect(plant.transitions.at(-1)).toMatchObject({ cause: 'reAlarm', from: 'acknowledged', actor: null });
    plant.run(1500);
    expect(annunciations(plant, 'WATER-1')).toBe(2);
  });

  it('is not while its cause is gone, or while it is shelved', () => {
    const gone = acknowledged();
    gone.m1.water = false;
    gone.run(900);
    expect(annunciations(gone, 'WATER-1')).toBe(1);
    const shelved = acknowledged();
    putAside(shelved, 'm1:WATER-1', { kind: 'shelve', forMs: 3_000_000 });
    shelved.run(900);
    expect(annunciations(shelved, 'WATER-1')).toBe(1);
  });

  it('counts on over a restart', () => {
    const after = restartedPlant(acknowledged(), 500);
    after.m1.water = true;
    after.run(90);
    expect(after.standing('WATER-1')).toMatchObject({ state: 'acknowledged' });
    after.run(15);
    expect(after.standing('WATER-1')).toMatchObject({ state: 'unacknowledged' });
  });
});

describe('an alarm of which the site says nothing', () => {
  it('is never told anew', () => {
    const plant = acknowledged(plantSite()).run(3000);
    expect(plant.standing('WATER-1')).toMatchObject({ state: 'acknowledged' });
  });
});
