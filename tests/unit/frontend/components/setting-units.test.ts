import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sayDelay, sayProposal, saySetting, settingUnit } from '../../../../frontend/src/components/setting-units';
import { fromTyped, toTyped } from '../../../../frontend/src/text/shown-unit';

const base = {
  limit: null,
  low: null,
  deadband: 0,
  onDelaySeconds: 0,
  offDelaySeconds: 0,
  reAlarmAfterSeconds: null,
  enabled: true,
  action: null,
};
const plain = (text: string | null): string | null => text?.replaceAll('\u00a0', ' ') ?? null;
const of = (entry: string, ucum: string | null, limit: number | null = null) => ({
  entry,
  unit_of_measure: ucum,
  limit,
});

describe('a setting in words', () => {
  it.each([
    // 1 kPa = 1000 Pa (SI).
    ['MARGIN-1', 'Pa', 'limit', 4500, '4.5 kPa'],
    // 20 L/min = 20/60000 m³/s (SI); gas is said as free air.
    ['AIR-1', 'm3/s', 'limit', 20 / 60_000, '20 L/min free air'],
    ['TSUP-1', 'Cel', 'limit', 2, '2 K above its set point'],
    // A deadband of a temperature is a difference.
    ['TSUP-1', 'Cel', 'deadband', 0.5, '0.5 K'],
    ['FAC-1', 'm3/s', 'limit', 0.5, '50 % of what flowed before'],
    ['FLOW-3', '1', 'limit', 0.8, '80 % of its share of the flow'],
    ['CHEM-2', '1', 'low', 8, '8 pH'],
    ['TANK-1', 's', 'limit', 1800, '30 min'],
    ['PUMP-2', 's', 'limit', 7 * 86_400, '7 d'],
  ] as const)('of %s says %s %s of %d as %s', (entry, ucum, member, value, said) => {
    expect(plain(saySetting(of(entry, ucum, value), member, { ...base, [member]: value }))).toBe(said);
  });

  it('says that an entry has none, and a yes or no as a word', () => {
    expect(saySetting(of('WATER-1', '1'), 'limit', base)).toBeNull();
    expect(saySetting(of('WATER-1', '1'), 'enabled', { ...base, enabled: false })).toBe('no');
  });

  it('keeps every second of a delay', () => {
    expect([10, 90, 600, 605, 3_600, 7_200].map((seconds) => plain(sayDelay(seconds)))).toEqual([
      '10 s',
      '90 s',
      '10 min',
      '605 s',
      '60 min',
      '2 h',
    ]);
  });

  it('says a proposal member by member', () => {
    expect(plain(sayProposal(of('MARGIN-1', 'Pa'), { deadband: 1200, onDelaySeconds: 30 }))).toBe(
      'deadband 1.2 kPa, raised after 30 s',
    );
  });

  it('gives back the value that was typed in its unit, for every unit', () => {
    const units = [
      settingUnit(of('MARGIN-1', 'Pa'), 'limit'),
      settingUnit(of('AIR-1', 'm3/s'), 'limit'),
      settingUnit(of('TANK-1', 's', 1800), 'limit'),
      settingUnit(of('CHEM-1', 'S/m'), 'limit'),
    ];
    fc.assert(
      fc.property(fc.constantFrom(...units), fc.integer({ min: 1, max: 9_999_999 }), (unit, typed) => {
        const shown = typed / 1000;
        expect(toTyped(fromTyped(shown, unit), unit)).toBeCloseTo(shown, 9);
      }),
    );
  });
});
