import { describe, expect, it } from 'vitest';
import { sayValueAgainstLimit } from '../../../../frontend/src/components/alarm-facts';
import { sayWindow } from '../../../../frontend/src/components/say-window';
import { formatPoint, formatQuantity } from '../../../../frontend/src/text/format-quantity';
import { aFigure, aWindow } from '../../../screens/fixtures/builders';

const said = (entry: string, value: number, limit: number, unit: string): string | undefined =>
  sayValueAgainstLimit({ entry, value, limit, unit_of_measure: unit })?.replaceAll('\u00a0', ' ');

describe('a value that has just crossed its limit', () => {
  it.each([
    ['MARGIN-1', 4_960, 5_000, 'Pa', '4.96 kPa against a limit of 5.00 kPa'],
    ['MARGIN-2', -40, 0, 'Pa', '−0.04 kPa against a limit of 0.00 kPa'],
    ['MARGIN-2', -4, 0, 'Pa', '−0.004 kPa against a limit of 0.000 kPa'],
    ['FLOW-3', 0.796, 0.8, '1', '79.6 % of its share of the flow against a limit of 80.0 % of its share of the flow'],
    ['TANK-3', 0.7998, 0.8, '1', '79.98 % of its usual level against a limit of 80.00 % of its usual level'],
  ])('of %s at %d is told from it', (entry, value, limit, unit, text) => {
    expect(said(entry, value, limit, unit)).toBe(text);
  });

  it('keeps its usual decimals where they tell it apart, or where two more would not', () => {
    expect(said('MARGIN-1', 4_100, 5_000, 'Pa')).toBe('4.1 kPa against a limit of 5.0 kPa');
    expect(said('MARGIN-1', 5_000, 5_000, 'Pa')).toBe('5.0 kPa against a limit of 5.0 kPa');
  });
});

describe('a margin a little below nought', () => {
  it('keeps its minus where it rounds to nought; any other difference does not', () => {
    expect(formatQuantity(-40, 'pressureDifference', { keepsSign: true }).number).toBe('−0.0');
    expect(formatQuantity(0, 'pressureDifference', { keepsSign: true }).number).toBe('0.0');
    expect(formatQuantity(-40, 'pressureDifference').number).toBe('0.0');
    expect(formatPoint('vacuumMargin', -40, null).number).toBe('−0.0');
    expect(formatPoint('branch.r1.vacuumMargin', -40, 600).number).toBe('−0.0');
    expect(formatPoint('filter.pressureDrop', -40, null).number).toBe('0.0');
    expect(sayWindow('E7', aWindow({ vacuumMargin: aFigure(-40) }))).toContain('vacuum margin to room air −0.0');
  });
});
