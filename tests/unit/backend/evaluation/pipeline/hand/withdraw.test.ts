import { describe, expect, it } from 'vitest';
import { correct, day, enter, hour, plantWithHand, pointOf, toHistory, withdraw } from './hand-plant';
import type { Plant } from '../plant';

const copper = 'water.copper.hand';
const alert = (plant: Plant, entry: string) => plant.pipeline.alerts().find((one) => one.entry === entry);

describe('a withdrawn entry', () => {
  it('counts no more: the sample before it is in force again, or none is', () => {
    const plant = plantWithHand().run(5);
    const first = enter(plant, { value: 0.03, takenMs: plant.nowMs - day });
    const wrong = enter(plant, { value: 5 });
    withdraw(plant, wrong.id);
    expect(pointOf(plant, copper)).toMatchObject({ quality: 'good', age: 86_400 });
    expect(pointOf(plant, copper).value).toBeCloseTo(0.00003, 12);
    withdraw(plant, first.id);
    expect(pointOf(plant.run(5), copper)).toMatchObject({
      value: Number.NaN,
      quality: 'bad',
      reasons: ['notReceived'],
    });
  });

  it('stays on record, beside one without a value that says who and why', () => {
    const plant = plantWithHand().run(5);
    const wrong = enter(plant, { value: 5 });
    const record = withdraw(plant, wrong.id);
    expect(record).toMatchObject({ value: null, typed: null, by: 'Ines', note: 'of another unit', corrects: wrong.id });
    expect(record.takenMs).toBe(wrong.takenMs);
    expect(plant.pipeline.handEntries('m1')).toEqual([record, wrong]);
    expect(plant.pipeline.handCorrector(wrong.id)).toBe(record.id);
  });

  it('of a corrected one leaves nothing of both in force', () => {
    const plant = plantWithHand().run(5);
    const wrong = enter(plant, { value: 5 });
    const right = correct(plant, wrong.id, 0.05);
    expect(() => withdraw(plant, wrong.id)).toThrow('HAND_ENTRY_CORRECTED_ALREADY');
    withdraw(plant, right.id);
    expect(pointOf(plant, copper).quality).toBe('bad');
  });

  it('can be neither corrected nor withdrawn, nor can its withdrawal', () => {
    const plant = plantWithHand().run(5);
    const wrong = enter(plant, { value: 5 });
    const record = withdraw(plant, wrong.id);
    for (const { id } of [wrong, record]) {
      expect(() => withdraw(plant, id)).toThrow('HAND_ENTRY_WITHDRAWN_ALREADY');
      expect(() => correct(plant, id, 0.04)).toThrow('HAND_ENTRY_WITHDRAWN_ALREADY');
    }
    expect(() => withdraw(plant, 'nothing')).toThrow('HAND_ENTRY_UNKNOWN');
    enter(plant, { value: 0.05, takenMs: wrong.takenMs });
    expect(pointOf(plant, copper).value).toBeCloseTo(0.00005, 12);
  });

  it('can be withdrawn however old its sample is', () => {
    const plant = plantWithHand().run(5);
    const wrong = enter(plant, { value: 5, takenMs: plant.nowMs - 400 * day });
    plant.run(60);
    withdraw(plant, wrong.id);
    expect(pointOf(plant, copper).quality).toBe('bad');
  });

  it('is due again from the sample before, and the alert that asks for it comes back', () => {
    const plant = plantWithHand().run(5);
    const { id } = enter(plant, { parameter: 'molybdate', value: 41, as: 'Mo' });
    enter(plant, { parameter: 'ph', value: 8.6, unitOfMeasure: '1', takenMs: plant.nowMs - 8 * day });
    const fresh = enter(plant, { parameter: 'ph', value: 8.7, unitOfMeasure: '1' });
    expect(alert(plant.run(40), 'CHEM-7')).toBeUndefined();
    withdraw(plant, fresh.id);
    expect(pointOf(plant.run(2), 'water.ph.hand')).toMatchObject({ value: 8.6, reasons: ['overdue'] });
    expect(alert(plant.run(40), 'CHEM-7')).toMatchObject({ where: 'ph' });
    enter(plant, { parameter: 'ph', value: 8.7, unitOfMeasure: '1', takenMs: plant.nowMs });
    expect(alert(plant.run(40), 'CHEM-7')).toBeUndefined();
    withdraw(plant, id);
    expect(alert(plant.run(40), 'CHEM-7')).toMatchObject({ where: 'molybdate' });
  });

  it('is judged no more: the alert that it raised goes', () => {
    const plant = plantWithHand().run(5);
    enter(plant, { parameter: 'molybdate', value: 40, as: 'Mo', takenMs: plant.nowMs - day });
    const wrong = enter(plant, { parameter: 'molybdate', value: 20, as: 'Mo' });
    expect(alert(plant.run(30), 'CHEM-4')).toBeDefined();
    withdraw(plant, wrong.id);
    expect(alert(plant.run(30), 'CHEM-4')).toBeUndefined();
  });

  it('is bad in history from then on, and one beside it in the same second stays', () => {
    const plant = plantWithHand().run(5);
    const takenMs = Math.floor((plant.nowMs - hour) / 1000) * 1000;
    const first = enter(plant, { value: 0.03, takenMs });
    const second = enter(plant, { value: 5, takenMs });
    toHistory(plant, copper);
    withdraw(plant, second.id);
    expect(toHistory(plant, copper)).toEqual([[takenMs, expect.closeTo(0.00003, 12)]]);
    withdraw(plant, first.id);
    expect(toHistory(plant, copper)).toEqual([[takenMs, Number.NaN]]);
  });

  it('is withdrawn after a restart as well', () => {
    const plant = plantWithHand().run(5);
    enter(plant, { value: 0.03, takenMs: plant.nowMs - day });
    withdraw(plant, enter(plant, { value: 5 }).id);
    const again = plantWithHand();
    again.second = plant.second;
    again.pipeline.restoreHand([...plant.pipeline.handEntries('m1')].reverse(), again.nowMs);
    expect(pointOf(again, copper)).toEqual(pointOf(plant, copper));
    expect(again.pipeline.handEntries('m1')).toEqual(plant.pipeline.handEntries('m1'));
  });

  it('that can not be recorded stays in force', () => {
    const plant = plantWithHand().run(5);
    const { id } = enter(plant);
    const action = {
      kind: 'withdrawByHand',
      unit: 'm1',
      entry: id,
      operator: 'Ines',
      station: 's',
      note: 'n',
    } as const;
    const outcome = plant.pipeline.actOnHand(action, plant.nowMs, () => false);
    expect(outcome).toMatchObject({ ok: false, code: 'ACTION_NOT_RECORDED' });
    expect(plant.pipeline.handEntries('m1')).toHaveLength(1);
    expect(pointOf(plant, copper).quality).toBe('good');
  });
});
