import { describe, expect, it } from 'vitest';
import { correct, day, enter, entry, hour, plantWithHand, pointOf, toHistory } from './hand-plant';

describe('a value that a person typed', () => {
  it('is the sample of its point, with the time at which it was taken, and never stale', () => {
    const plant = plantWithHand().run(5);
    expect(pointOf(plant, 'water.copper.hand')).toMatchObject({ quality: 'bad', reasons: ['notReceived'] });
    enter(plant, { takenMs: plant.nowMs - 3 * day });
    plant.run(60);
    const point = pointOf(plant, 'water.copper.hand');
    expect(point).toMatchObject({ quality: 'good', reasons: [] });
    expect(point.value).toBeCloseTo(0.00005, 12);
    expect(point.age).toBeCloseTo(3 * 86_400 + 60, 6);
  });

  it('is used with care once the next is due, until that is typed', () => {
    const plant = plantWithHand().run(5);
    enter(plant, { parameter: 'ph', value: 8.6, unitOfMeasure: '1', takenMs: plant.nowMs - 7 * day + 30_000 });
    expect(pointOf(plant.run(20), 'water.ph.hand')).toMatchObject({ quality: 'good', value: 8.6 });
    expect(pointOf(plant.run(20), 'water.ph.hand')).toMatchObject({ quality: 'uncertain', reasons: ['overdue'] });
    enter(plant, { parameter: 'ph', value: 8.7, unitOfMeasure: '1' });
    expect(pointOf(plant.run(5), 'water.ph.hand')).toMatchObject({ quality: 'good', value: 8.7 });
  });

  it('stays the older of two when it was taken before', () => {
    const plant = plantWithHand().run(5);
    enter(plant, { value: 0.05, takenMs: plant.nowMs - day });
    enter(plant, { value: 0.09, takenMs: plant.nowMs - 2 * day });
    expect(pointOf(plant, 'water.copper.hand').value).toBeCloseTo(0.00005, 12);
  });

  // Molar masses 95.95 and 159.95 g/mol (IUPAC): 66.7 mg/L as MoO₄ are 40 mg/L as Mo.
  it('of molybdate is counted as Mo, whichever the person said', () => {
    const plant = plantWithHand().run(5);
    enter(plant, { parameter: 'molybdate', value: 66.68, as: 'MoO4' });
    expect(pointOf(plant, 'water.molybdate.hand').value).toBeCloseTo(0.04, 5);
    enter(plant, { parameter: 'molybdate', value: 40, as: 'Mo', takenMs: plant.nowMs });
    expect(pointOf(plant, 'water.molybdate.hand').value).toBeCloseTo(0.04, 12);
  });

  // ISO 7888, linear form: 120 µS/cm at 40 °C and 2 %/K are 92.31 µS/cm at 25 °C.
  it('of conductivity is brought to 25 °C where the instrument has not done so', () => {
    const plant = plantWithHand().run(5);
    enter(plant, { parameter: 'conductivity', value: 120, unitOfMeasure: 'µS/cm', sampleTemperature: 40 });
    expect(pointOf(plant, 'water.conductivity.hand').value).toBeCloseTo(92.31e-4, 6);
    enter(plant, { parameter: 'conductivity', value: 120, unitOfMeasure: 'µS/cm', takenMs: plant.nowMs });
    expect(pointOf(plant, 'water.conductivity.hand').value).toBeCloseTo(120e-4, 9);
  });

  it('goes to history at its own time, once', () => {
    const plant = plantWithHand().run(5);
    toHistory(plant, 'water.copper.hand');
    const takenMs = plant.nowMs - 2 * day;
    enter(plant, { takenMs });
    plant.run(5);
    const second = Math.floor(takenMs / 1000) * 1000;
    expect(toHistory(plant, 'water.copper.hand')).toEqual([[second, expect.closeTo(0.00005, 12)]]);
  });
});

describe('a correction', () => {
  it('stands in the place of an entry, which stays beside it', () => {
    const plant = plantWithHand().run(5);
    const wrong = enter(plant, { value: 5 });
    const right = correct(plant, wrong.id, 0.05);
    expect(pointOf(plant, 'water.copper.hand').value).toBeCloseTo(0.00005, 12);
    expect(
      plant.pipeline
        .handEntries('m1')
        .map(({ id }) => id)
        .sort(),
    ).toEqual([wrong.id, right.id].sort());
    expect(plant.pipeline.handCorrector(wrong.id)).toBe(right.id);
    expect(() => correct(plant, wrong.id, 0.04)).toThrow('HAND_ENTRY_CORRECTED_ALREADY');
    expect(() => correct(plant, 'nothing', 0.04)).toThrow('HAND_ENTRY_UNKNOWN');
  });
});

describe('an entry', () => {
  const refused = [
    ['a unit that the site has not', { unit: 'm9' }, 'UNIT_UNKNOWN'],
    ['a parameter that nobody knows', { parameter: 'gold' }, 'HAND_ENTRY_PARAMETER'],
    ['a parameter that is not typed here', { parameter: 'iron' }, 'HAND_ENTRY_PARAMETER'],
    ['a unit of measure of something else', { unitOfMeasure: 'kPa' }, 'HAND_ENTRY_UNIT_OF_MEASURE'],
    ['ppm, which is read in two ways', { unitOfMeasure: 'ppm' }, 'HAND_ENTRY_UNIT_OF_MEASURE'],
    ['pH in mV', { parameter: 'ph', value: 8, unitOfMeasure: 'mV' }, 'HAND_ENTRY_UNIT_OF_MEASURE'],
    ['molybdate without saying as what', { parameter: 'molybdate', value: 40 }, 'HAND_ENTRY_FORM'],
    ['copper as Mo', { as: 'Mo' }, 'HAND_ENTRY_FORM'],
    ['copper with a temperature', { sampleTemperature: 30 }, 'HAND_ENTRY_FORM'],
    ['a negative concentration', { value: -1 }, 'HAND_ENTRY_RANGE'],
    ['pH 15', { parameter: 'ph', value: 15, unitOfMeasure: '1' }, 'HAND_ENTRY_RANGE'],
    ['100 times too much', { value: 200_000 }, 'HAND_ENTRY_RANGE'],
  ] as const;

  it.for(refused)('of %s is refused and changes nothing', ([, change, code]) => {
    const plant = plantWithHand().run(5);
    expect(plant.pipeline.actOnHand(entry(plant, change), plant.nowMs)).toMatchObject({ ok: false, code });
    expect(plant.pipeline.handEntries('m1')).toEqual([]);
  });

  it('of a sample taken in the future, or long ago, is refused', () => {
    const plant = plantWithHand().run(5);
    for (const takenMs of [plant.nowMs + 2 * hour, plant.nowMs - 500 * day, Number.NaN]) {
      const outcome = plant.pipeline.actOnHand(entry(plant, { takenMs }), plant.nowMs);
      expect(outcome).toMatchObject({ ok: false, code: 'HAND_ENTRY_TIME' });
    }
  });

  it('that can not be recorded is not taken in', () => {
    const plant = plantWithHand().run(5);
    const outcome = plant.pipeline.actOnHand(entry(plant), plant.nowMs, () => false);
    expect(outcome).toMatchObject({ ok: false, code: 'ACTION_NOT_RECORDED' });
    expect(plant.pipeline.handEntries('m1')).toEqual([]);
    expect(pointOf(plant, 'water.copper.hand').quality).toBe('bad');
  });
});
