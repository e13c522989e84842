import { describe, expect, it } from 'vitest';
import { catalogue } from '../../../../../backend/src/evaluation/alarm-rules/catalogue/catalogue';
import { alarmTexts } from '../../../../../backend/src/evaluation/pipeline/alarm-texts';
import type { AlarmRecord } from '../../../../../backend/src/evaluation/pipeline/outputs';
import { plantSite } from './plant';

const record = (entry: string, more: Partial<AlarmRecord> = {}): AlarmRecord => ({
  alarm: `m1:${entry}`,
  entry,
  unit: 'm1',
  hall: 'h',
  state: 'unacknowledged',
  active: true,
  priority: 2,
  sinceMs: 0,
  stateSinceMs: 0,
  value: null,
  limit: null,
  unitOfMeasure: null,
  where: null,
  foldedUnder: null,
  acknowledgedBy: null,
  acknowledgedAtMs: null,
  ...more,
});

describe('texts of an alarm', () => {
  it.each(['a', 'b', 'c'] as const)('tell the first action of plant shape (%s)', (shape) => {
    const site = plantSite();
    const units = site.units.map((unit) => ({ ...unit, shape }));
    const texts = alarmTexts({ ...site, units }, record('MARGIN-1'));
    expect(texts.action).toBe(catalogue['MARGIN-1'].action[shape]);
    expect(texts.title).toBe('Vacuum margin small');
    expect(texts.timeToRespondSeconds).toBe(480);
  });

  it('tell the site’s own procedure in place of it', () => {
    const site = plantSite({ unit: { limits: { 'AIR-1': { action: 'Site procedure 12.' } } } });
    expect(alarmTexts(site, record('AIR-1')).action).toBe('Site procedure 12.');
  });

  it('tell at most what its priority leaves, where the time is computed', () => {
    expect(alarmTexts(plantSite(), record('PUMP-1', { priority: 2 })).timeToRespondSeconds).toBe(300);
    expect(alarmTexts(plantSite(), record('PUMP-1', { priority: 1 })).timeToRespondSeconds).toBe(180);
    expect(alarmTexts(plantSite(), record('TANK-1', { priority: 1 })).timeToRespondSeconds).toBe(180);
  });

  it('tell the shorter time where signs make it worse', () => {
    expect(alarmTexts(plantSite(), record('MARGIN-2', { priority: 2 })).timeToRespondSeconds).toBe(180);
    expect(alarmTexts(plantSite(), record('MARGIN-2', { priority: 1 })).timeToRespondSeconds).toBe(120);
  });

  it('are there for a gateway of several units, for a hall, and for an entry of an older catalogue', () => {
    const site = plantSite({ units: ['m1', 'm2'] });
    expect(alarmTexts(site, record('COM-1', { alarm: 'g:COM-1', unit: null })).title).toBe(catalogue['COM-1'].title);
    expect(alarmTexts(site, record('INS-1', { alarm: 'h:INS-1:ambient.pressure', unit: null })).action).not.toBe('');
    expect(alarmTexts(site, record('OLD-9')).title).toContain('OLD-9');
  });
});
