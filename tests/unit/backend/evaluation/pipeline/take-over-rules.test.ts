import { describe, expect, it } from 'vitest';
import { Plant, plantSite } from './plant';
import { annunciations, who } from './set-aside-plant';

/** Racks with a rope each. */
const site = (...racks: readonly string[]) =>
  plantSite({
    unit: {
      branches: Object.fromEntries(
        racks.map((rack) => [rack, { name: `Rack ${rack.slice(1)}`, ratedFlow: '43 L/min' }]),
      ),
    },
    points: { 'branch.*.water.found': { path: 'racks.{branch}.water' } },
  });

const wet = (plant: Plant, ...racks: readonly string[]): Plant => {
  for (const [id, rack] of Object.entries(plant.m1.racks)) Object.assign(rack, { water: racks.includes(id) });
  return plant;
};

describe('water at a rack that was told, in a unit whose racks are others now', () => {
  it('is not told again, and the next rack is, whatever rack stood in its place', () => {
    const plant = wet(new Plant(site('r1', 'r2', 'r3', 'r4')), 'r3').run(20);
    plant.pipeline.act({ kind: 'acknowledge', alarm: 'm1:WATER-1', ...who }, plant.nowMs);
    plant.reload(site('r2', 'r3', 'r4')).run(60);
    expect(plant.standing('WATER-1')).toMatchObject({ state: 'acknowledged', where: 'Rack 3' });
    wet(plant, 'r3', 'r4').run(10);
    expect(plant.standing('WATER-1')).toMatchObject({ state: 'unacknowledged', where: 'Rack 4' });
    expect(annunciations(plant, 'WATER-1')).toBe(2);
  });
});
