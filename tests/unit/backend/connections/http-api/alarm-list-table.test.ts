import { describe, expect, it } from 'vitest';
import { alarmListTable } from '../../../../../backend/src/connections/http-api/alarm-list-table';
import { aListing, anEntry, marginSettings } from '../../../../screens/fixtures/alarm-management';

/** Cells of a table without line breaks in its cells, by the titles of its columns. */
function rowsOf(csv: string): Record<string, string>[] {
  const [head = '', ...lines] = csv
    .replace(/^\uFEFF/, '')
    .trimEnd()
    .split('\r\n');
  const cells = (line: string): string[] =>
    [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(([, quoted, plain]) =>
      quoted === undefined ? (plain ?? '') : quoted.replaceAll('""', '"'),
    );
  const titles = cells(head);
  return lines.map((line) => Object.fromEntries(cells(line).map((cell, i) => [titles[i] ?? '', cell])));
}

describe('the alarm list as a table', () => {
  const running = { ...marginSettings, limit: -500, reAlarmAfterSeconds: 14_400, action: '=HYPERLINK("http://x","y")' };
  const listing = aListing([
    anEntry('MARGIN-1', {
      title: '=1+1',
      cause: '+SUM(A1), "quoted"',
      consequence: '-2+3',
      owner: '@cmd',
      settings: [
        { scope: { kind: 'site' }, authorised: marginSettings, running: marginSettings, differs: [] },
        { scope: { kind: 'unit', id: 'e7' }, authorised: marginSettings, running, differs: ['limit', 'action'] },
      ],
    }),
  ]);
  const rows = rowsOf(alarmListTable(listing));

  it('has a line for each place with what runs there, what is authorised, and in what they differ', () => {
    expect(
      rows.map((row) => [row['entry'], row['scope'], row['place'], row['limit'], row['authorised limit']]),
    ).toEqual([
      ['MARGIN-1', 'site', '', '5000', '5000'],
      ['MARGIN-1', 'unit', 'e7', '-500', '5000'],
    ]);
    expect(rows[1]).toMatchObject({ reAlarmAfterSeconds: '14400', differs: 'limit action', 'authorised action': '' });
    expect(rows[0]).toMatchObject({ reAlarmAfterSeconds: '', differs: '' });
  });

  it('lets no text begin as a formula, wherever it comes from, and leaves numbers numbers', () => {
    const begins = Object.values(rows[1] ?? {}).filter((cell) => /^[=+\-@\t\r]/.test(cell));
    expect(begins).toEqual(['-500']);
    for (const [column, text] of [
      ['title', '=1+1'],
      ['cause', '+SUM(A1), "quoted"'],
      ['consequence', '-2+3'],
      ['owner', '@cmd'],
      ['action', '=HYPERLINK("http://x","y")'],
    ] as const)
      expect(rows[1]?.[column]).toBe(`'${text}`);
  });
});
