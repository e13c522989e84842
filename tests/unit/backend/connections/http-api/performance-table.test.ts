import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import { alarmPerformanceSchema } from '@ebbline/shared/contract/alarm-performance';
import { performanceTable } from '../../../../../backend/src/connections/http-api/performance-table';
import { performanceExamples } from '../../../../contract/http-examples-performance';

const report = alarmPerformanceSchema.parse(performanceExamples['get /api/alarms/performance'].reply);

describe('alarm performance as a table', () => {
  const lines = parse<Record<string, string>>(performanceTable(report), { columns: true });

  it('has a line for each figure with its target, verdict and source', () => {
    expect(
      lines.filter(({ part }) => part === 'figure').map(({ id, value, limit, verdict }) => [id, value, limit, verdict]),
    ).toEqual([
      ['steadyRate', '0.02', '2', 'within'],
      ['tenMostFrequentShare', '', '5', 'nothing'],
    ]);
  });

  it('has every part of the report', () => {
    expect([...new Set(lines.map(({ part }) => part))]).toEqual([
      ...['period', 'figure', 'mix', 'mostFrequent', 'chattering', 'fleeting', 'stale', 'flood'],
      ...['acknowledging', 'clearing', 'perHour'],
    ]);
    expect(lines.find(({ part }) => part === 'chattering')?.['note']).toBe('It came back by 0.36 K at most.');
  });

  /** OWASP, "CSV Injection". */
  it('never begins a cell as a formula does, whatever a unit is called', () => {
    const evil = {
      ...report,
      stale: report.stale.map((one) => ({ ...one, alarm: '=HYPERLINK("x"):AIR-1', unit: '@SUM(1)' })),
    };
    const [stale] = parse<Record<string, string>>(performanceTable(evil), { columns: true }).filter(
      ({ part }) => part === 'stale',
    );
    expect(stale).toMatchObject({ id: `'=HYPERLINK("x"):AIR-1`, unit: `'@SUM(1)` });
  });
});
