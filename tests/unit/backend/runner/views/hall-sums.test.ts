import type { Reading } from '@ebbline/shared/contract/reading';
import { describe, expect, it } from 'vitest';
import { hallSums, type UnitInputs } from '../../../../../backend/src/runner/views/hall-sums';

const reading = (id: string, value: number | null, expandedUncertainty: number | null): Reading => ({
  id,
  kind: 'derived',
  value,
  unit: 'W',
  time: value === null ? null : '2031-05-06T07:08:09.650Z',
  age: value === null ? null : 1,
  quality: value === null ? 'bad' : 'good',
  reasons: value === null ? ['notReceived'] : [],
  expandedUncertainty,
  where: null,
});
const unit = (name: string, heat: number | null, power: number | null, u: number | null = 8): UnitInputs => ({
  unit: name,
  readings: [reading('heatRemoved', heat, u), reading('chipPower', power, u === null ? null : 0.75 * u)],
});
const onlyHeat = ({ unit: name, readings }: UnitInputs): UnitInputs => ({ unit: name, readings: readings.slice(0, 1) });
const add = (point: string, units: readonly UnitInputs[]) => {
  const sum = hallSums[point];
  if (sum === undefined) throw new RangeError(`no sum ${point}`);
  return sum.add(units);
};

describe('a sum over the units of a hall', () => {
  it('adds heats, and uncertainties of separate instruments as squares (JCGM 100:2008, 5.1.2)', () => {
    const { figure, parts } = add('heatRemoved', [unit('a', 300, 400, 6), unit('b', 100, 200, 8)].map(onlyHeat));
    expect(figure).toMatchObject({ value: 400, quality: 'good', expandedUncertainty: 10 });
    expect(parts).toEqual([
      { from: 'a:heatRemoved', contribution: 3 },
      { from: 'b:heatRemoved', contribution: 4 },
    ]);
  });

  it('says of a sum that can not be told why, and nothing of units that never have a part in it', () => {
    const absent: UnitInputs = {
      unit: 'b',
      readings: [{ ...reading('heatRemoved', null, null), reasons: ['notApplicable'] }],
    };
    const { figure } = add('heatRemoved', [onlyHeat(unit('a', null, 200)), absent]);
    expect(figure).toMatchObject({ value: null, reasons: ['notReceived'] });
    expect(add('heatRemoved', [absent]).figure).toMatchObject({ value: null, reasons: ['notApplicable'] });
  });

  it('leaves out a unit without a value, and says that an input is missing', () => {
    const { figure, parts } = add('heatRemoved', [unit('a', 300, 400), unit('b', null, 200)].map(onlyHeat));
    expect(figure).toMatchObject({ value: 300, quality: 'uncertain', reasons: ['inputBad'] });
    expect(parts.map(({ from }) => from)).toEqual(['a:heatRemoved']);
  });

  it('takes capture over the units that have both, with the partial derivatives of a quotient', () => {
    const { figure, parts } = add('capture', [unit('a', 300, 400), unit('b', null, 200), unit('c', 100, 100)]);
    expect(figure.value).toBeCloseTo(400 / 500, 12);
    expect(figure.reasons).toEqual(['inputBad']);
    const [heat, power] = parts;
    expect(heat?.contribution).toBeCloseTo(4 / 500, 12);
    expect(power?.contribution).toBeCloseTo((400 * 3) / 500 ** 2, 12);
    expect(figure.expandedUncertainty).toBeCloseTo(2 * Math.sqrt(2 * (0.008 ** 2 + 0.0048 ** 2)), 12);
  });

  it.each([
    ['a hundred times the power', 40_000, 400],
    ['heat that goes back', -40, 400],
  ])('gives no capture of %s: no meters can be right about it', (_, heat, power) => {
    const { figure, parts } = add('capture', [unit('a', heat, power)]);
    expect(figure).toMatchObject({ value: null, quality: 'bad', reasons: ['contradicted'], age: 1 });
    expect(parts).toEqual([]);
  });

  it('without any value gives the reasons of its units, each once, and the age of the oldest', () => {
    const warming = (age: number): Reading => ({ ...reading('heatRemoved', null, null), age, reasons: ['warming'] });
    const units = [1, 3].map((age) => ({ unit: `u${age}`, readings: [warming(age)] }));
    const { figure } = add('heatRemoved', units);
    expect(figure).toMatchObject({ value: null, quality: 'bad', reasons: ['warming'], age: 3 });
    const lost = { unit: 'c', readings: [reading('heatRemoved', null, null)] };
    expect(add('heatRemoved', [...units, lost]).figure.reasons).toEqual(['warming', 'notReceived']);
    const both = units.map((one) => ({ ...one, readings: [...one.readings, reading('chipPower', 300, 4)] }));
    expect(add('capture', both).figure).toMatchObject({ value: null, quality: 'bad', reasons: ['warming'] });
    expect(add('heatRemoved', []).figure).toMatchObject({ value: null, reasons: ['notReceived'] });
  });

  it('says that a share of no power at all is undefined', () => {
    expect(add('capture', [unit('a', 0, 0)]).figure).toMatchObject({ value: null, age: 1, reasons: ['undefined'] });
  });

  it('has no value without chip power, and no uncertainty where a part states none', () => {
    expect(add('capture', [unit('a', 300, null)]).figure.value).toBeNull();
    expect(add('capture', [unit('a', 300, 0)]).figure.value).toBeNull();
    expect(add('capture', [unit('a', 300, 400, null)]).figure).toMatchObject({ expandedUncertainty: null });
  });
});
