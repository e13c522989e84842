import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  parseQuantity,
  splitRange,
  writtenUnitsFor,
  type WrittenQuantity,
} from '@ebbline/shared/contract/site-file-quantity';

const si = (text: string, kind: WrittenQuantity): number => {
  const parsed = parseQuantity(text, kind);
  return parsed.ok ? parsed.value : Number.NaN;
};

describe('parseQuantity', () => {
  it.each([
    ['346 L/min', 'volumeFlow', 346 / 60_000],
    ['62 m³/h', 'volumeFlow', 62 / 3600],
    // NIST SP 811 (2008) B.8: 6.309 020 E−05.
    ['1 gpm', 'volumeFlow', 6.30902e-5],
    ['-0.5 m', 'length', -0.5],
    ['5cm', 'length', 0.05],
    ['95 °F', 'temperature', 35],
    ['9 °F', 'temperatureDifference', 5],
    ['2 K', 'temperatureDifference', 2],
    ['7 d', 'duration', 604_800],
    ['20 free L/min', 'freeAirFlow', 20 / 60_000],
    ['50 %', 'ratio', 0.5],
    ['0.5', 'ratio', 0.5],
    ['1e2 µS/cm', 'conductivity', 0.01],
    ['1500 cm²', 'area', 0.15],
  ] as const)('reads %s as a %s', (text, kind, expected) => {
    expect(si(text, kind)).toBeCloseTo(expected, 8);
  });

  it.each([
    ['L/min', 'volumeFlow'],
    ['346', 'volumeFlow'],
    ['3,5 m', 'length'],
    ['346 l/min', 'volumeFlow'],
    ['1 L/min', 'freeAirFlow'],
    ['0x10 m', 'length'],
    ['', 'length'],
  ] as const)('refuses %j as a %s and tells what fits', (text, kind) => {
    const parsed = parseQuantity(text, kind);
    expect(!parsed.ok && parsed.fault).toContain(writtenUnitsFor(kind)[0]);
  });

  it('reads back every number in every unit of measure of a flow', () => {
    const number = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(number, fc.constantFrom(...writtenUnitsFor('volumeFlow')), (value, unit) => {
        expect(si(`${value} ${unit}`, 'volumeFlow')).toBeCloseTo(value * si(`1 ${unit}`, 'volumeFlow'), 6);
      }),
    );
  });
});

describe('splitRange', () => {
  it.each([
    ['0 to 160 kPa', { from: 0, to: 160, unit: 'kPa' }],
    ['-100 to 60 kPa', { from: -100, to: 60, unit: 'kPa' }],
    ['0..1', { from: 0, to: 1, unit: '1' }],
  ])('reads %s', (text, expected) => {
    expect(splitRange(text)).toEqual(expected);
  });

  it.each(['160 kPa', '0-160 kPa', 'low to high', ''])('refuses %j', (text) => {
    expect(splitRange(text)).toBeNull();
  });
});
