import { join } from 'node:path';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { rowsLookedAt, rowsLookedAtByWords } from '../../backend/src/connections/alarm-journal/journal-search';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import type { JournalQuery } from '../../backend/src/ports/journal-query';
import { temporaryFolder, type TemporaryFolder } from '../helpers/temporary-folder';
import { acknowledged, raised, record, startMs, transition } from './journal-samples';

const minute = 60_000;
const all = { fromMs: null, toMs: null, after: null } as const;
let folder: TemporaryFolder;
let journal: SqliteAlarmJournal;

beforeEach(async () => {
  folder = await temporaryFolder();
  journal = new SqliteAlarmJournal(join(folder.path, 'journal.sqlite'));
});
afterEach(async () => {
  journal.close();
  await folder.stop();
});

const found = (query: Partial<JournalQuery>): number[] =>
  journal.page({ ...all, ...query }).rows.map(({ sequence }) => sequence);

/** 1 to 3: raised; 4: acknowledged; 5: of another unit, hall and priority, an hour later. */
function fill(): void {
  for (const n of [1, 2, 3]) add(...raised(n));
  add(...acknowledged(2));
  const other = { alarm: 'east-7:FLOW-1:b3', entry: 'FLOW-1', unit: 'east-7', hall: 'east', where: 'Branch “B‑3”' };
  const later = { priority: 3, atMs: startMs + 60 * minute } as const;
  add(transition({ ...other, ...later }), record({ ...other, priority: 3 }));
}
const add = (one: ReturnType<typeof transition>, kept: ReturnType<typeof record>): void =>
  void journal.append([one], [kept], startMs);

describe('a search of the journal', () => {
  it.each([
    [{ unit: 'east-7' }, [5]],
    [{ hall: 'hall-1' }, [1, 2, 3, 4]],
    [{ entry: 'AIR-1', priority: 1 }, [1, 2, 3, 4]],
    [{ alarm: 'unit-2:AIR-1' }, [2, 4]],
    [{ kind: 'action' }, [4]],
    [{ actor: 'operator 2' }, [4]],
    [{ actor: 'operator' }, []],
    [{ priority: 3, hall: 'hall-1' }, []],
    [{ unit: 'unit-1', kind: 'transition', entry: 'AIR-1', fromMs: startMs, toMs: startMs + 1 }, [1, 2, 3]],
    [{ fromMs: startMs + minute }, [5]],
    [{ toMs: startMs }, []],
  ] as const)('for %j gives %j', (query, sequences) => {
    fill();
    expect(found(query)).toEqual(sequences);
  });

  it.each([
    ['air', [1, 2, 3, 4]],
    ['AIR-1 seen', [4]],
    ['oper', [4]],
    ['branch B‑3', [5]],
    ['east-7:flow', [5]],
    ['acknowledge', [4]],
    ['seen missing', []],
    ['-- "', []],
  ] as const)('for the text %j gives %j', (text, sequences) => {
    fill();
    expect(found({ text })).toEqual(sequences);
    expect(found({ text, order: 'newest' })).toEqual([...sequences].reverse());
  });

  it('takes any text for words and never for syntax', () => {
    fill();
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1, maxLength: 200 }), (text) => {
        expect(() => found({ text: `${text} OR air*` })).not.toThrow();
        expect(found({ unit: text, actor: text })).toEqual([]);
      }),
      { numRuns: 100 },
    );
  });

  it('gives the newest first, page by page, the same while rows are added', () => {
    for (let n = 1; n <= 7; n++) add(...raised(n));
    const pages: number[][] = [];
    let before: number | null = null;
    do {
      const page = journal.page({ ...all, order: 'newest', before, limit: 3 });
      pages.push(page.rows.map(({ sequence }) => sequence));
      add(...raised(99));
      before = page.next;
    } while (before !== null);
    expect(pages).toEqual([[7, 6, 5], [4, 3, 2], [1]]);
  });

  it('gives every row once in both orders, whatever the filter and the size of a page', () => {
    fill();
    const filters: Partial<JournalQuery>[] = [
      {},
      { text: 'air' },
      { hall: 'hall-1', entry: 'AIR-1' },
      { audit: false },
    ];
    fc.assert(
      fc.property(fc.constantFrom(...filters), fc.integer({ min: 1, max: 6 }), (filter, limit) => {
        const [up, down]: [number[], number[]] = [[], []];
        for (let after: number | null = 0; after !== null;) {
          const page = journal.page({ ...all, ...filter, after, limit });
          up.push(...page.rows.map(({ sequence }) => sequence));
          after = page.next;
        }
        for (let before: number | null = Number.MAX_SAFE_INTEGER; before !== null;) {
          const page = journal.page({ ...all, ...filter, order: 'newest', before, limit });
          down.push(...page.rows.map(({ sequence }) => sequence));
          before = page.next;
        }
        expect(up).toEqual(found(filter));
        expect(down).toEqual([...up].reverse());
      }),
      { numRuns: 60 },
    );
  });

  it('finds rows by when they happened where the clock was set back in between', () => {
    const happened = (n: number): number => startMs + (n <= 2000 ? n : n - 1500) * minute;
    const batch = Array.from({ length: 3000 }, (_, i) => ({ ...raised(i + 1)[0], atMs: happened(i + 1) }));
    journal.append(
      batch,
      batch.map((_, i) => raised(i + 1)[1]),
      startMs,
    );
    const [fromMs, toMs] = [happened(600), happened(602)];
    expect(found({ fromMs, toMs })).toEqual([600, 601, 2100, 2101]);
    expect(found({ fromMs, toMs, order: 'newest' })).toEqual([2101, 2100, 601, 600]);
    expect(found({ fromMs: happened(1999), toMs: null })).toEqual([1999, 2000]);
  });

  it('ends a page after so many rows were looked at, and goes on there', () => {
    const batch = Array.from({ length: rowsLookedAt + 1000 }, (_, i) => raised(i + 1));
    const one = batch.map(([each], i) =>
      i === rowsLookedAt + 500 ? { ...each, hall: 'east' } : { ...each, unit: 'm1' },
    );
    journal.append(
      one,
      batch.map(([, kept]) => kept),
      startMs,
    );
    for (const filter of [
      { hall: 'east', unit: 'unit-1' },
      { hall: 'hall-1', unit: 'm1', kind: 'action' },
    ] as const) {
      const first = journal.page({ ...all, ...filter });
      expect(first.rows.length).toBeLessThanOrEqual(1);
      if (first.next === null) continue;
      expect(first).toMatchObject({ rows: [], next: expect.any(Number) as number });
      expect(journal.page({ ...all, ...filter, after: first.next })).toMatchObject({ rows: [], next: null });
    }
    const byWords = { ...all, text: 'air', kind: 'action' } as const;
    const nexts = [journal.page(byWords).next];
    for (let next = nexts[0]; next !== null; next = nexts.at(-1))
      nexts.push(journal.page({ ...byWords, after: next ?? null }).next);
    expect(nexts).toEqual([1000, 2000, 3000, 4000, 5000, 6000, null].slice(0, nexts.length));
    expect(nexts.length).toBeGreaterThan(5);
    expect(journal.page({ ...byWords, order: 'newest' }).next).toBe(rowsLookedAt + 1001 - rowsLookedAtByWords);
    expect(journal.page({ ...all, audit: false, fromMs: startMs + 1, order: 'newest' })).toEqual({
      rows: [],
      next: null,
    });
  });
});
