import { describe, expect, it } from 'vitest';
import { Plant, plantSite } from './plant';
import { restartedPlant } from './set-aside-plant';

/** A loop of alternating tanks whose racks tell flow and return pressure. */
const site = (name = 'Unit') => plantSite({ unit: { name, shape: 'b', hoseBore: '8 mm' } });

/** Gas fills rack 2, whose flow is gone, and lifts the common return under all racks alike. */
function lock(plant: Plant): Plant {
  for (const rack of Object.values(plant.m1.racks)) rack.p = 48;
  Object.assign(plant.m1.racks['r2'] ?? {}, { flow: 1 });
  return plant;
}

function locked(): Plant {
  const plant = lock(new Plant(site()).run(40)).run(60);
  expect(plant.standing('AIR-1')).toMatchObject({ active: true, where: 'Rack 2' });
  return plant;
}

/** Nothing has changed in the plant: the air goes on, and explains the flow of rack 2. */
function expectGoesOn(plant: Plant): void {
  plant.run(120);
  expect(plant.standing('AIR-1')).toMatchObject({ active: true, where: 'Rack 2' });
  expect(plant.entries()).not.toContain('FLOW-3');
}

describe('AIR-1 of alternating tanks whose rack is full of gas', () => {
  it('stands when the site file takes the place of one with another name of the unit', () => {
    expectGoesOn(locked().reload(site('Another name')));
  });

  it('stands over a restart of five seconds', () => {
    expectGoesOn(lock(restartedPlant(locked(), 5, 'memory')));
  });

  it('ends when the others stand as low again as before the step, after a reload and after a restart', () => {
    for (const plant of [locked().reload(site('Another name')), lock(restartedPlant(locked(), 5, 'memory'))]) {
      plant.run(20);
      for (const rack of Object.values(plant.m1.racks)) Object.assign(rack, { p: 43, flow: 43 });
      expect(plant.run(90).standing('AIR-1')?.active ?? false).toBe(false);
    }
  });
});
