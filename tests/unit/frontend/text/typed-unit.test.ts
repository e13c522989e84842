import fc from 'fast-check';
import { afterEach, describe, expect, it } from 'vitest';
import { fieldBound, fieldText, readField, sayBound, typedUnit } from '../../../../frontend/src/text/typed-unit';
import { usOfWritten } from '../../../../frontend/src/text/us-units';
import { readIn } from '../../../helpers/read-in';

afterEach(() => readIn('metric'));

describe('a number that is typed', () => {
  it('is sent as it is in metric units', () => {
    const unit = typedUnit('kPa');
    expect([unit.unit, readField('4.25', unit), fieldText(4.25, unit)]).toEqual(['kPa', 4.25, '4.25']);
  });

  it('is converted in US units, a temperature with its nought and a difference without', () => {
    readIn('us');
    expect(readField('212', typedUnit('°C'))).toBeCloseTo(100, 9);
    expect(readField('18', typedUnit('K'))).toBeCloseTo(10, 9);
    // 1 psi = 6.894757 kPa (NIST SP 811).
    expect(readField('1', typedUnit('kPa'))).toBeCloseTo(6.894757, 6);
    expect(typedUnit('kPa').unit).toBe('psi');
  });

  it.each(Object.keys(usOfWritten))('is the same number to read again after it was sent: %s', (written) => {
    readIn('us');
    const unit = typedUnit(written);
    fc.assert(
      fc.property(fc.integer({ min: -999_999, max: 999_999 }), (typed) => {
        const value = readField(String(typed / 1000), unit);
        expect(value).not.toBe('');
        if (value !== '') expect(value * unit.factor + (unit.offset ?? 0)).toBeCloseTo(typed / 1000, 6);
      }),
    );
  });

  it.each(['', ' ', '-', '1e', 'ten', 'Infinity'])('is nothing where it is no number: "%s"', (text) => {
    readIn('us');
    expect(readField(text, typedUnit('kPa'))).toBe('');
    expect(fieldText('', typedUnit('kPa'))).toBe('');
  });

  it('has bounds in the unit that is typed', () => {
    expect(sayBound(30, typedUnit('°C'), 'least')).toBe('30');
    readIn('us');
    expect(sayBound(30, typedUnit('°C'), 'least')).toBe('86.0');
    expect(sayBound(30, typedUnit('°C'), 'most')).toBe('86.0');
    // 0.5 mm are 0.019685 in, 10 000 L/min 2641.7 gpm: each is rounded to the inside.
    expect(sayBound(0.5, typedUnit('mm'), 'least')).toBe('0.0197');
    expect(sayBound(0.5, typedUnit('mm'), 'most')).toBe('0.0196');
    expect(sayBound(10_000, typedUnit('L/min'), 'most')).toBe('2641');
    expect(sayBound(10_000, typedUnit('L/min'), 'least')).toBe('2642');
  });

  it.each(Object.keys(usOfWritten))('takes each bound typed as it is told: %s', (written) => {
    readIn('us');
    const unit = typedUnit(written);
    fc.assert(
      fc.property(fc.integer({ min: -99_999, max: 999_999 }), fc.constantFrom(1, 10, 1000), (whole, parts) => {
        const bound = whole / parts;
        const told = (end: 'least' | 'most') => sayBound(bound, unit, end).replace('−', '-').replaceAll('\u202f', '');
        expect(readField(told('least'), unit)).toBeGreaterThanOrEqual(bound);
        expect(readField(told('most'), unit)).toBeLessThanOrEqual(bound);
        // By the field too, which holds it against the bound in its own unit.
        expect(Number(told('least'))).toBeGreaterThanOrEqual(fieldBound(bound, unit));
        expect(Number(told('most'))).toBeLessThanOrEqual(fieldBound(bound, unit));
      }),
    );
  });
});
