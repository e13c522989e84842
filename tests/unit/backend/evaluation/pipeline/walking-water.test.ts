import { describe, expect, it } from 'vitest';
import { Plant, plantSite, type Telemetry } from './plant';

const tanks = {
  volumes: { water: '488 L', supplyTankUsable: '80 L', separatorRoom: '90 L' },
  tanks: { separatorArea: '0.25 m2', supplyArea: '0.3 m2', supplyUsualLevel: '0.5 m', separatorUsualLevel: '0.6 m' },
};
const site = plantSite({ units: ['m1', 'm2'], unit: tanks, document: { loops: { l: { units: ['m1', 'm2'] } } } });
const twoUnits = (): Plant => new Plant(site).run(90);
const other = (plant: Plant): Telemetry => plant.telemetry['m2'] as Telemetry;
const isActive = (plant: Plant): boolean =>
  plant.pipeline.standing().some(({ alarm, active }) => alarm === 'm2:TANK-2' && active);

/** 12 L/min is 0.0008 m a second in 0.25 m²: the separator of m2 stays well below four fifths of its room. */
const walk = (plant: Plant, seconds: number): Plant =>
  plant.run(seconds, () => {
    plant.m1.levelSeparator -= 0.0008;
    other(plant).levelSeparator += 0.0008;
  });
const gains = (plant: Plant, seconds: number, metresPerS: number): Plant =>
  plant.run(seconds, () => void (other(plant).levelSeparator += metresPerS));
const lose = (telemetry: Telemetry): void => void Object.assign(telemetry, { levelSeparator: null });

describe('water that walks in from another unit', () => {
  it('is not over where the level of that unit is lost, and is where both are seen to stand still', () => {
    const plant = walk(twoUnits(), 100);
    expect(isActive(plant)).toBe(true);
    lose(plant.m1);
    expect(isActive(gains(plant, 150, 0.0008))).toBe(true);
    plant.m1.levelSeparator = 0.4;
    expect(isActive(plant.run(240))).toBe(false);
  });

  it('is over where this unit gains no more, whatever is known of the other', () => {
    const plant = walk(twoUnits(), 100);
    lose(plant.m1);
    expect(isActive(plant.run(240))).toBe(false);
  });

  it('holds no alarm of a level that was never a walk', () => {
    const plant = gains(twoUnits(), 200, 0.0016).run(60);
    expect(isActive(plant)).toBe(true);
    lose(plant.m1);
    gains(plant, 30, -0.006);
    expect(isActive(gains(plant, 150, 0.0006))).toBe(false);
  });
});
