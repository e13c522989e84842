import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { pointTable } from '@ebbline/shared/contract/point-table';
import { fromSi, toSi, unitOfMeasure, unitsOfMeasure, unitsOfMeasureFor } from '@ebbline/shared/units/units-of-measure';

const convert = (value: number, id: string, quantity: Parameters<typeof unitOfMeasure>[1]): number => {
  const row = unitOfMeasure(id, quantity);
  if (!row) throw new Error(`no row ${id}`);
  return toSi(row, value);
};

describe('units of measure', () => {
  it.each([
    // value, unit, SI, source
    [1, 'psi', 6894.757, 'NIST SP 811 appendix B'],
    [1, 'mmHg', 133.3224, 'NIST SP 811 appendix B'],
    [1, 'inHg', 3386.389, 'NIST SP 811 appendix B'],
    [1, 'bar', 1e5, 'SI brochure table 8'],
    [1, 'mbar', 100, 'SI brochure table 8'],
  ] as [number, string, number, string][])(
    '%d %s is %d Pa (%s: seven digits)',
    (value: number, unit: string, pa: number) => {
      expect(Math.abs(convert(value, unit, 'absolutePressure') / pa - 1)).toBeLessThan(5e-7);
    },
  );

  it('takes a US gallon per minute as 6.309 020e-5 m³/s (NIST SP 811 appendix B)', () => {
    expect(Math.abs(convert(1, 'gpm(US)', 'volumeFlow') / 6.30902e-5 - 1)).toBeLessThan(5e-7);
  });

  it('fixes the Fahrenheit scale at freezing and boiling: 32 °F is 0 °C, 212 °F is 100 °C (definition)', () => {
    expect(convert(32, 'degF', 'temperature')).toBeCloseTo(0, 12);
    expect(convert(212, 'degF', 'temperature')).toBeCloseTo(100, 12);
  });

  it('keeps temperatures and temperature differences apart', () => {
    expect(convert(273.15, 'K', 'temperature')).toBeCloseTo(0, 12);
    expect(convert(5, 'K', 'temperatureDifference')).toBe(5);
    expect(convert(9, 'degF', 'temperatureDifference')).toBeCloseTo(5, 12);
  });

  it('counts gas metered at 0 °C as more free air at 20 °C (ideal gas)', () => {
    expect(convert(273.15, 'L/min at 0 degC', 'freeAirFlow')).toBeCloseTo(293.15 / 60_000, 12);
  });

  it.each([
    ['L/min', 'freeAirFlow'],
    ['%', 'level'],
    ['ppm', 'concentration'],
    ['K', 'absolutePressure'],
  ] as const)('refuses %s for %s', (id, quantity) => {
    expect(unitOfMeasure(id, quantity)).toBeUndefined();
  });

  it('has a unit of measure for every quantity of the point table', () => {
    for (const point of pointTable) expect(unitsOfMeasureFor(point.quantity), point.id).not.toHaveLength(0);
  });

  it('has one row only for an id and a quantity, each with its source', () => {
    const keys = unitsOfMeasure.flatMap((row) => row.quantities.map((quantity) => `${row.id} ${quantity}`));
    expect(new Set(keys).size).toBe(keys.length);
    for (const row of unitsOfMeasure) expect(row.source).not.toBe('');
  });

  it('comes back from SI to the number it started from', () => {
    fc.assert(
      fc.property(fc.constantFrom(...unitsOfMeasure), fc.double({ min: -1e6, max: 1e6, noNaN: true }), (row, value) => {
        expect(Math.abs(fromSi(row, toSi(row, value)) - value)).toBeLessThan(1e-6);
      }),
    );
  });
});
