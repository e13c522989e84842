import { describe, expect, it } from 'vitest';
import { type JournalRow, journalRowSchema } from '@ebbline/shared/contract/alarm';
import { journalFactsSchema } from '@ebbline/shared/contract/journal-facts';
import { journalExport } from '../../../../../backend/src/connections/http-api/journal-export';
import type { JournalQuery } from '../../../../../backend/src/ports/journal-query';

const row = (sequence: number): JournalRow => ({
  sequence,
  time: '2031-05-06T07:08:14.020Z',
  sourceTime: '2031-05-06T07:08:14.000Z',
  kind: 'action',
  alarm: 'm1:AIR-1',
  unit: 'm1',
  entry: 'AIR-1',
  from: null,
  to: null,
  priority: 1,
  value: -0.5,
  limit: null,
  unit_of_measure: 'm3/s',
  where: null,
  actor: '@Ines',
  station: null,
  reason: '+1 "seen"',
  facts: { setting: { scope: { kind: 'site' }, link: '' } } as unknown as NonNullable<JournalRow['facts']>,
  previousHash: '0'.repeat(64),
  hash: 'a'.repeat(64),
});

/** A journal of so many rows, two a page, that grows by one with each page that is asked for. */
function growing(rows: number): { asked: JournalQuery[]; journal: Parameters<typeof journalExport>[0] } {
  const asked: JournalQuery[] = [];
  const journal = {
    head: () => ({ sequence: rows, hash: 'f'.repeat(64) }),
    page(query: JournalQuery) {
      asked.push(query);
      const after = query.after ?? 0;
      const last = Math.min((query.before ?? 0) - 1, rows + asked.length);
      const found = [after + 1, after + 2].filter((sequence) => sequence <= last).map(row);
      return { rows: found, next: after + 2 < last ? after + 2 : null };
    },
  };
  return { asked, journal };
}
const everything = { fromMs: null, toMs: null, after: null, unit: 'm1', audit: false } as const;

describe('the journal as a file', () => {
  it('asks for the next page only when the last one was taken, and no more once nobody takes it', async () => {
    const { asked, journal } = growing(100);
    const { pieces } = journalExport(journal, everything, 'csv');
    expect(asked).toEqual([]);
    let taken = 0;
    for await (const piece of pieces) {
      expect(piece).not.toBe('');
      taken += 1;
      if (taken === 4) break;
    }
    expect(asked.length).toBe(3);
    expect(asked[0]).toMatchObject({ unit: 'm1', audit: false, order: 'oldest', before: 101 });
  });

  it('ends with the row that was the newest when it was begun', async () => {
    const { journal } = growing(5);
    let text = '';
    for await (const piece of journalExport(journal, everything, 'json').pieces) text += piece;
    const { head, rows } = JSON.parse(text) as { head: unknown; rows: { sequence: number }[] };
    expect(head).toEqual({ sequence: 5, hash: 'f'.repeat(64) });
    expect(rows.map(({ sequence }) => sequence)).toEqual([1, 2, 3, 4, 5]);
  });

  it('has a column in the table for all that a row and its facts may say', async () => {
    let text = '';
    for await (const piece of journalExport(growing(1).journal, everything, 'csv').pieces) text += piece;
    const header = (text.split('\r\n')[0] ?? '').split(',').map((name) => name.replaceAll('"', ''));
    const said = Object.keys(journalRowSchema.shape).filter((member) => member !== 'facts');
    expect([...header].sort()).toEqual([...said, ...Object.keys(journalFactsSchema.shape)].sort());
  });

  it('keeps numbers as numbers, makes formulas harmless and writes facts of many members as JSON', async () => {
    let text = '';
    for await (const piece of journalExport(growing(1).journal, everything, 'csv').pieces) text += piece;
    const [header = '', first = '', last = '', end] = text.split('\r\n');
    expect(end).toBe('');
    expect(header.split(',').slice(0, 2)).toEqual(['"sequence"', '"time"']);
    expect(first).toContain(',-0.5,');
    expect(first).toContain(`"'@Ines"`);
    expect(first).toContain(`"'+1 ""seen"""`);
    expect(first).toContain('"{""scope"":{""kind"":""site""},""link"":""""}"');
    expect(last).toMatch(/^1,/);
    expect(last).toContain('"head"');
    expect(last).toContain('f'.repeat(64));
  });
});
