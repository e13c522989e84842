import { describe, expect, it } from 'vitest';
import { pointTable } from '@ebbline/shared/contract/point-table';
import { formatByUnit, formatPoint, formatQuantity, inWords } from '../../../../frontend/src/text/format-quantity';

const say = (...given: Parameters<typeof formatQuantity>): string =>
  inWords(formatQuantity(...given)).replaceAll('\u00a0', ' ');

describe('a quantity in print', () => {
  it('says of a pressure that it is absolute, and of a difference nothing', () => {
    expect(say(101_325, 'absolutePressure')).toBe('101.3 kPa absolute');
    expect(say(4_100, 'pressureDifference')).toBe('4.1 kPa');
  });

  it('says of a gas flow that it is free air', () => {
    expect(say(1 / 60_000, 'freeAirFlow')).toBe('1.0 L/min free air');
  });

  it('keeps the unit of a power whatever its size: kW, and W for one chip', () => {
    expect(inWords(formatPoint('plate.c1.power', 1_020, 40))).toBe('1020 ± 40\u00a0W');
    expect(say(420, 'power')).toBe('0.42 kW');
    expect(say(1_117_800, 'power', { uncertainty: 1_900 })).toBe('1118 ± 2 kW');
    expect(say(1_117_800, 'power', { uncertainty: 124_000 })).toBe('1120 ± 120 kW');
    expect(say(4_200, 'power')).toBe('4.20 kW');
    expect(say(281_000, 'power', { uncertainty: 5_000 })).toBe('281 ± 5 kW');
    expect(say(3_420_000, 'power', { uncertainty: 50_000 })).toBe('3420 ± 50 kW');
  });

  it('sets below nought a true minus, and never writes minus nought', () => {
    expect(say(-2_000, 'pressureDifference')).toBe('−2.0 kPa');
    expect(say(-1, 'pressureDifference')).toBe('0.0 kPa');
  });

  it('shows a share in per cent and a count as a count', () => {
    expect(inWords(formatPoint('capture', 0.947, null))).toBe('94.7\u00a0%');
    expect(inWords(formatPoint('openingsCarried', 1.4, null))).toBe('1.4\u00a0open hoses');
  });

  it('says yes, no and a mode as words', () => {
    expect(inWords(formatPoint('pump.running', 1, null))).toBe('yes');
    expect(inWords(formatPoint('mode', 6, null))).toBe('running');
    expect(inWords(formatPoint('mode', 99, null))).toBe('not known');
  });

  it('gives every point of the contract that is no word its unit', () => {
    const wordless = pointTable.filter(({ quantity }) => quantity !== 'yesNo' && quantity !== 'mode');
    for (const { id } of wordless) expect(formatPoint(id, 1, null).unit, id).not.toBe('');
  });

  it('says a rate of temperature, as an alarm shows it, in kelvin a minute', () => {
    expect(inWords(formatByUnit(2 / 60, 'K/s'))).toBe('2.0\u00a0K/min');
  });

  it('prints a value of an unknown unit with the code that came with it', () => {
    expect(inWords(formatByUnit(3, 'mol', false))).toBe('3.00\u00a0mol');
  });
});
