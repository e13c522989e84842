import { describe, expect, it } from 'vitest';
import { energyUnitFor, formatEnergy, sayMeasured } from '../../../../frontend/src/text/format-energy';
import { differenceUnit } from '../../../../frontend/src/text/display-unit';
import { formatContribution, formatShare, formatSiteFigure } from '../../../../frontend/src/text/format-site-figure';
import { openedValue, valueHere, valueLink, withoutValue } from '../../../../frontend/src/text/value-link';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('the address of an opened value', () => {
  it('names the point alone on a loop, the unit too elsewhere, and comes back as it was', () => {
    expect(valueLink('N3', 'vacuumMargin').query).toEqual({ value: 'vacuumMargin' });
    expect(openedValue({ value: 'branch.r1.heatRemoved' }, 'N3')).toEqual({
      unit: 'N3',
      point: 'branch.r1.heatRemoved',
    });
    const { query } = valueHere({ unit: 'N3', point: 'ua' }, { last: '60' });
    expect(query).toEqual({ last: '60', value: 'N3:ua' });
    expect(openedValue(query, null)).toEqual({ unit: 'N3', point: 'ua' });
    expect(withoutValue(query)).toEqual({ last: '60' });
  });

  it('opens nothing that it does not name', () => {
    for (const value of [undefined, '', ':', 'N3:', ':ua', ['ua', 'ntu']])
      expect(openedValue({ value }, null)).toBeNull();
    expect(openedValue({ value: 'ua' }, null)).toBeNull();
  });
});

describe('what stands behind a value', () => {
  it('is said in the units of the screens, with four digits and no idle noughts', () => {
    expect(plain(formatSiteFigure(0.85, 'm3'))).toBe('850 L');
    expect(plain(formatSiteFigure(101_325, 'Pa'))).toBe('101.3 kPa');
    expect(plain(formatSiteFigure(997.06, 'kg/m3'))).toBe('997.1 kg/m³');
    expect(formatSiteFigure(0, '1')).toBe('0');
    expect(formatSiteFigure(0.00012346, '1')).toBe('0.0001235');
  });

  it('has contributions with two digits and shares in whole per cent, never rounded to none', () => {
    expect(plain(formatContribution(230.94, differenceUnit('absolutePressure', 0)))).toBe('0.23 kPa');
    expect(plain(formatContribution(0.134, differenceUnit('temperature', 0)))).toBe('0.13 K');
    expect(plain(formatContribution(0, { unit: 'K', factor: 1 }))).toBe('0 K');
    expect([0.574, 0.0002, -0.08, 0].map((share) => plain(formatShare(share)))).toEqual([
      '57 %',
      '< 1 %',
      '−8 %',
      '0 %',
    ]);
  });
});

describe('an energy', () => {
  const kilowattHour = 3.6e6;

  it('is in kWh until a table of them would be in tens of thousands', () => {
    expect(energyUnitFor(9_999 * kilowattHour).unit).toBe('kWh');
    expect(energyUnitFor(10_000 * kilowattHour).unit).toBe('MWh');
  });

  it('has the digits of its uncertainty, and is nothing where nothing was measured', () => {
    const unit = energyUnitFor(0);
    expect(
      plain(formatEnergy({ energy: 162.3 * kilowattHour, expandedUncertainty: 9.7 * kilowattHour }, unit) ?? ''),
    ).toBe('162 ± 10');
    expect(formatEnergy({ energy: null, expandedUncertainty: null }, unit)).toBeNull();
  });

  it('says how much was measured without rounding a gap away', () => {
    const say = (share: number | null, energy: number | null = 1): string => plain(sayMeasured({ share, energy }));
    expect(say(1)).toBe('all measured');
    expect(say(0.99999)).toBe('99.9 % measured');
    expect(say(1 - (17 * 60) / 3600)).toBe('72 % measured');
    expect(say(0.0004)).toBe('< 1 % measured');
    expect(say(0, null)).toBe('nothing measured');
    expect(say(null, null)).toBe('not measured here');
  });
});
