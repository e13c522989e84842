import type { AlarmSettings } from '@ebbline/shared/contract/alarm-settings';
import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { toColumns } from '../../../../frontend/src/charts/to-columns';
import { sayAlarmValue } from '../../../../frontend/src/components/alarm-facts';
import { axisTicks, pressureAxis } from '../../../../frontend/src/components/pressure-axis';
import { saySetting, settingUnit } from '../../../../frontend/src/components/setting-units';
import { formOf, wantedOf } from '../../../../frontend/src/screens/limits/setting-form';
import { lineOf } from '../../../../frontend/src/screens/trends/line-of';
import { displayUnitOf } from '../../../../frontend/src/text/display-unit';
import { readIn } from '../../../helpers/read-in';

beforeEach(() => readIn('us'));
afterEach(() => readIn('metric'));

const running: AlarmSettings = {
  limit: 80,
  low: null,
  deadband: 2,
  onDelaySeconds: 30,
  offDelaySeconds: 60,
  reAlarmAfterSeconds: null,
  enabled: true,
  action: null,
};
const ofPlate = { entry: 'PLATE-1', unit_of_measure: 'Cel', limit: 80 };
const settable = { unit_of_measure: 'Cel', side: 'above', hasDeadband: true, changeable: true } as const;
const plain = (text: string | null): string => (text ?? '').replaceAll('\u00a0', ' ');

describe('a setting in US units', () => {
  it('is a temperature where it is one, and a difference where it is a distance or a deadband', () => {
    // t/°F = 1.8 t/°C + 32; an interval of 1 K is 1.8 °F (NIST SP 811, appendix B).
    expect(plain(saySetting(ofPlate, 'limit', running))).toBe('176 °F');
    expect(plain(saySetting(ofPlate, 'deadband', running))).toBe('3.6 °F');
    const above = { entry: 'TSUP-1', unit_of_measure: 'Cel', limit: 2 };
    expect(plain(saySetting(above, 'limit', { ...running, limit: 2 }))).toBe('3.6 °F above its set point');
    expect(settingUnit(above, 'deadband').offset ?? 0).toBe(0);
  });

  it('is changed by nothing but what was typed', () => {
    const form = formOf(ofPlate, running);
    expect(wantedOf(ofPlate, settable, running, form)).toEqual({});
    const typed = wantedOf(ofPlate, settable, running, { ...form, limit: 185, deadband: 5.4 });
    expect(typed?.limit).toBeCloseTo(85, 9);
    expect(typed?.deadband).toBeCloseTo(3, 9);
  });

  it('comes back unchanged through its form, whatever runs', () => {
    fc.assert(
      fc.property(fc.integer({ min: -500_000, max: 2_000_000 }), (thousandths) => {
        const now = { ...running, limit: thousandths / 10_000 };
        expect(wantedOf(ofPlate, settable, now, formOf(ofPlate, now))).toEqual({});
      }),
    );
  });

  it('stands with the value of an alarm in the same unit', () => {
    expect(plain(sayAlarmValue('PLATE-1', 85, 'Cel'))).toBe('185.0 °F');
    expect(plain(sayAlarmValue('MARGIN-1', 6_894.757, 'Pa'))).toBe('1.00 psi');
  });

  it('is gas in cubic feet where the alarm of an open permit shows a flow', () => {
    // 1 ft = 0.3048 m (NIST SP 811, appendix B): 0.001 m³/s is 127.1 ft³/h.
    expect(plain(sayAlarmValue('PERMIT-1', 0.001, 'm3/s'))).toBe('127.1 ft³/h free air');
  });
});

describe('a chart in US units', () => {
  const history: HistoryColumns = {
    unit: 'e1',
    point: 'supply.temperature',
    unit_of_measure: 'Cel',
    bucketMs: 1000,
    resolution: 'second',
    start: ['2026-03-01T12:00:00.000Z'],
    min: [0],
    mean: [10],
    max: [100],
    count: [1],
  };
  const fahrenheit = () => displayUnitOf('temperature', 0);

  it('draws a temperature where its scale has it', () => {
    const { min, mean, max } = toColumns(history, fahrenheit(), { time: '2026-03-01T12:00:02.000Z', value: 20 });
    expect([min[0], mean[0], max[0], mean.at(-1)]).toEqual([32, 50, 212, 68]);
  });

  it('draws its uncertainty about it as a spread', () => {
    const track = { seconds: [Date.parse(history.start[0] ?? '') / 1000], expanded: [0.5] };
    const { uncertainty } = lineOf(
      {
        columns: new Map([['e1:supply.temperature', history]]),
        live: new Map(),
        newest: new Map(),
        uncertainties: new Map([['e1:supply.temperature', track]]),
      },
      { unit: 'e1', point: 'supply.temperature' },
      0,
      fahrenheit(),
    );
    expect(uncertainty?.[0]).toBeCloseTo(0.9, 12);
  });

  it('labels the axis of the strips at whole psi', () => {
    const psi = displayUnitOf('absolutePressure', 0);
    const labels = axisTicks(pressureAxis([101_325], 640)).map((pa) => pa * psi.factor);
    expect(labels.length).toBeGreaterThan(3);
    for (const label of labels) expect(Math.abs(label - Math.round(label))).toBeLessThan(1e-9);
  });
});
