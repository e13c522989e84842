import { describe, expect, it } from 'vitest';
import type { TrendLine } from '../../../../frontend/src/screens/trends/trend-lane';
import { trendTable } from '../../../../frontend/src/screens/trends/trend-table';
import { fileName } from '../../../../frontend/src/screens/trends/save-file';
import { aSite } from '../../../screens/fixtures/builders';

const noon = Date.parse('2026-03-01T12:00:00.000Z') / 1000;
const line: TrendLine = {
  ...{ key: 'e7:heatRemoved', unit: 'e7', point: 'heatRemoved', letter: 'a', ink: 0, beside: null, isOfNow: true },
  seconds: [noon, noon + 10, noon + 20],
  min: [1, null, 3],
  mean: [1.5, null, 3.5],
  max: [2, null, 4],
  uncertainty: [0.25, null, null],
};
const lane = (lines: readonly TrendLine[]) => ({
  id: 'power',
  title: 'power, kW',
  scale: { unit: 'kW', words: null, range: null, say: String },
  lines,
  limits: [],
});
const shown = { from: noon, to: noon + 60, site: aSite(), zone: 'Europe/Oslo' };
const rowsOf = (text: string): string[] => text.trimEnd().split('\r\n');

describe('the table of a trend', () => {
  it('has the times in UTC and in the zone of the site, and each line with its unit of measure', () => {
    const [header, first, gap, last] = rowsOf(trendTable([lane([line])], shown));
    const of = 'E7 Heat removed, kW';
    expect(header).toBe(
      `"time (UTC)","time (Europe/Oslo)","${of}, mean","${of}, least","${of}, most","${of}, expanded uncertainty (k = 2)"`,
    );
    expect(first).toBe('"2026-03-01T12:00:00.000Z","2026-03-01 13:00:00",1.5,1,2,0.25');
    expect(gap).toBe('"2026-03-01T12:00:10.000Z","2026-03-01 13:00:10",,,,');
    expect(last).toBe('"2026-03-01T12:00:20.000Z","2026-03-01 13:00:20",3.5,3,4,');
  });

  it('has the rows that are drawn and no others', () => {
    const rows = rowsOf(trendTable([lane([line])], { ...shown, from: noon + 5, to: noon + 15 }));
    expect(rows).toHaveLength(2);
  });

  it('names what a line is held beside, and puts lines of other times in rows of their own', () => {
    const earlier: TrendLine = {
      ...line,
      mark: 'circle',
      beside: '24 h earlier',
      uncertainty: null,
      seconds: [noon + 1],
      min: [9],
      mean: [9],
      max: [9],
    };
    const [header, , second] = rowsOf(trendTable([lane([{ ...line, uncertainty: null }, earlier])], shown));
    expect(header).toContain('"E7 Heat removed, 24 h earlier, kW, mean"');
    expect(second).toBe('"2026-03-01T12:00:01.000Z","2026-03-01 13:00:01",,,,9,9,9');
  });

  it('says at the head of its columns that a line could not be read', () => {
    const empty: TrendLine = { ...line, seconds: [], min: [], mean: [], max: [], uncertainty: null };
    const failures = new Map([['e7:heatRemoved', 'The server did not answer in time.']]);
    const [header] = rowsOf(trendTable([lane([empty])], { ...shown, failures }));
    expect(header).toContain('"E7 Heat removed, could not be read, kW, mean"');
  });

  it('has a file name without what a file system refuses', () => {
    expect(fileName('2026-11-26 15:00:00', '2026-11-26 16:00:00', 'csv')).toBe(
      'trend-2026-11-26-150000-to-2026-11-26-160000.csv',
    );
  });
});
