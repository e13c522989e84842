import { describe, expect, it } from 'vitest';
import { plantSite, type Plant } from '../plant';
import { day, enter, limits, plantWithHand, pointOf, sensor, water } from './hand-plant';

const alert = (plant: Plant, entry: string) => plant.pipeline.alerts().find((one) => one.entry === entry);

describe('what people type', () => {
  it('is judged by the band of its parameter, and the case is told', () => {
    const plant = plantWithHand().run(5);
    enter(plant, { parameter: 'molybdate', value: 20, as: 'Mo' });
    plant.run(30);
    expect(alert(plant, 'CHEM-4')).toMatchObject({ where: 'molybdate', unitOfMeasure: 'kg/m3' });
    expect(alert(plant, 'CHEM-4')?.value).toBeCloseTo(0.02, 9);
    expect(alert(plant, 'CHEM-4')?.limit).toBeCloseTo(0.03, 9);
    expect(alert(plant, 'CHEM-4')?.detail).toContain('Molybdate, as Mo: low, as typed by a person');
    enter(plant, { parameter: 'molybdate', value: 66.7, as: 'MoO4', takenMs: plant.nowMs });
    expect(alert(plant.run(30), 'CHEM-4')).toBeUndefined();
  });

  it('of salts is judged by bands of its own', () => {
    const plant = plantWithHand().run(5);
    enter(plant, { parameter: 'chloride', value: 12 });
    expect(alert(plant.run(30), 'CHEM-6')).toMatchObject({ where: 'chloride' });
  });

  it('counts only while the sensor is bad: what the site measures wins', () => {
    const plant = plantWithHand();
    Object.assign(plant.m1, { ph: 8.8 });
    plant.run(5);
    enter(plant, { parameter: 'ph', value: 6.5, unitOfMeasure: '1' });
    expect(alert(plant.run(40), 'CHEM-2')).toBeUndefined();
    // The sensor sends no more: after its five seconds the typed value counts.
    Object.assign(plant.m1, { ph: null });
    plant.run(40);
    expect(pointOf(plant, 'ph').quality).toBe('bad');
    expect(alert(plant, 'CHEM-2')).toMatchObject({ value: 6.5, limit: 8 });
  });

  it('is asked for where nobody has typed any, after a delay, and again once it is due', () => {
    const plant = plantWithHand();
    expect(alert(plant.run(15), 'CHEM-7')).toBeUndefined();
    expect(alert(plant.run(20), 'CHEM-7')).toMatchObject({ where: 'ph' });
    enter(plant, { parameter: 'ph', value: 8.6, unitOfMeasure: '1' });
    expect(alert(plant.run(5), 'CHEM-7')).toBeDefined();
    enter(plant, { parameter: 'molybdate', value: 40, as: 'Mo', takenMs: plant.nowMs - 14 * day + 25_000 });
    expect(alert(plant.run(22), 'CHEM-7')).toBeUndefined();
    expect(alert(plant.run(50), 'CHEM-7')).toMatchObject({ where: 'molybdate' });
  });

  it('stays when another site file comes in force, and after a restart', () => {
    const plant = plantWithHand().run(5);
    enter(plant, { value: 0.05, takenMs: plant.nowMs - 3 * day });
    const records = plant.pipeline.handEntries('m1');
    plant.reload(
      plantSite({ unit: { water, limits }, points: { ...sensor, 'water.turbidity': { path: 'x', unit: 'NTU' } } }),
    );
    expect(pointOf(plant.run(5), 'water.copper.hand').value).toBeCloseTo(0.00005, 12);
    const again = plantWithHand();
    again.second = plant.second;
    again.pipeline.restoreHand(records, again.nowMs);
    expect(pointOf(again, 'water.copper.hand')).toEqual(pointOf(plant, 'water.copper.hand'));
    expect(again.pipeline.handEntries('m1')).toEqual(records);
  });
});
