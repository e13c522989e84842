import type { JournalRow } from '@ebbline/shared/contract/alarm';
import { fail, ok } from '@ebbline/shared/errors/result';
import { describe, expect, it } from 'vitest';
import { useJournal } from '../../../../frontend/src/state/use-journal';

const row = (sequence: number): JournalRow => ({
  sequence,
  time: '2026-03-01T11:48:10.100Z',
  sourceTime: '2026-03-01T11:48:10.000Z',
  kind: 'action',
  alarm: null,
  unit: null,
  entry: null,
  from: null,
  to: null,
  priority: null,
  value: null,
  limit: null,
  unit_of_measure: null,
  where: null,
  actor: null,
  station: null,
  reason: null,
  previousHash: '0',
  hash: '1',
});
type Page = Awaited<ReturnType<NonNullable<NonNullable<Parameters<typeof useJournal>[0]>['read']>>>;

describe('what the journal holds of what is looked for', () => {
  it('comes newest first, a page at a time, and says whether older rows may follow', async () => {
    const asked: (number | null)[] = [];
    const pages = [ok({ rows: [row(3), row(2)], next: 2 }), ok({ rows: [row(1)], next: null })];
    const journal = useJournal({
      rowsAtOnce: 2,
      read: (_, before) => {
        asked.push(before);
        return Promise.resolve(pages.shift() ?? ok({ rows: [], next: null }));
      },
    });
    await journal.read({});
    expect(journal.rows.value.map(({ sequence }) => sequence)).toEqual([3, 2]);
    expect(journal.more.value).toBe(true);
    await journal.readMore();
    expect(journal.rows.value.map(({ sequence }) => sequence)).toEqual([3, 2, 1]);
    expect([journal.more.value, journal.busy.value]).toEqual([false, false]);
    expect(asked).toEqual([null, 2]);
  });

  it('goes on where a page holds too few of what is looked for, but not for ever', async () => {
    let asked = 0;
    const read = (): Promise<Page> => {
      asked += 1;
      return Promise.resolve(ok({ rows: asked === 3 ? [row(9)] : [], next: 1000 - asked }));
    };
    const journal = useJournal({ rowsAtOnce: 2, pagesAtOnce: 4, read });
    await journal.read({ text: 'hose' });
    expect(asked).toBe(4);
    expect(journal.rows.value.map(({ sequence }) => sequence)).toEqual([9]);
    expect(journal.more.value).toBe(true);
  });

  it('takes the newest wish though an older one is not answered yet, and nothing of the older one', async () => {
    const answers: ((page: Page) => void)[] = [];
    const journal = useJournal({ read: () => new Promise<Page>((resolve) => answers.push(resolve)) });
    const older = journal.read({ from: '2026-11-26T00:00:00.000Z' });
    const newer = journal.read({ from: '2026-03-03T01:00:00.000Z' });
    answers[1]?.(ok({ rows: [row(7)], next: null }));
    await newer;
    answers[0]?.(ok({ rows: [row(1)], next: null }));
    await older;
    expect(journal.rows.value.map(({ sequence }) => sequence)).toEqual([7]);
    expect(journal.busy.value).toBe(false);
  });

  it('shows no row of another filter under this one: not while it is read, nor where that fails', async () => {
    const answers: ((page: Page) => void)[] = [];
    const journal = useJournal({ read: () => new Promise<Page>((resolve) => answers.push(resolve)) });
    const first = journal.read({ unit: 'e1' });
    answers[0]?.(ok({ rows: [row(1)], next: null }));
    await first;
    const other = journal.read({ unit: 'e7' });
    expect(journal.rows.value).toEqual([]);
    answers[1]?.(fail({ code: 'REQUEST_TIMED_OUT', message: 'x' }));
    await other;
    expect(journal.rows.value).toEqual([]);
    expect(journal.problem.value).not.toBeNull();
  });

  it('keeps its rows in sight while the same filter is read again', async () => {
    const answers: ((page: Page) => void)[] = [];
    const journal = useJournal({ read: () => new Promise<Page>((resolve) => answers.push(resolve)) });
    const first = journal.read({ unit: 'e1' });
    answers[0]?.(ok({ rows: [row(1)], next: null }));
    await first;
    const again = journal.read({ unit: 'e1' });
    expect(journal.rows.value.map(({ sequence }) => sequence)).toEqual([1]);
    answers[1]?.(ok({ rows: [row(2), row(1)], next: null }));
    await again;
    expect(journal.rows.value.map(({ sequence }) => sequence)).toEqual([2, 1]);
  });
});
