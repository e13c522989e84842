import type { JournalQuery } from '../../ports/journal-query';
import { notOfAudit } from './audit-entry';
import type { JournalDatabase } from './journal-database';
import { chainedEntry, rowColumns, type ChainedEntry, type StoredValues } from './journal-entry';
import { storedText } from './stored-text';

export interface FoundRows {
  readonly rows: readonly ChainedEntry[];
  readonly next: number | null;
}

/** So many rows at most are looked at for one page: what else the program does waits meanwhile. */
export const rowsLookedAt = 5000;
/** Where rows are walked by the words in them, each is fetched from another place. */
export const rowsLookedAtByWords = 1000;

/** What narrows to few rows first: by its index the rows are walked, and the others are looked at in each. */
const byIndex = ['alarm', 'unit', 'actor', 'entry', 'hall', 'priority', 'kind'] as const;

type Value = string | number;
type Statement = ReturnType<JournalDatabase['prepare']>;

interface Condition {
  readonly sql: string;
  readonly values: readonly Value[];
}

interface Walked {
  readonly text: boolean;
  readonly of: readonly Condition[];
}

/** Sequences between which rows are, both left out. */
interface Bounds {
  readonly above: number;
  readonly below: number;
}

/** Finds rows by what they say. Every value is a parameter; the texts of the statements are a few, and kept. */
export class JournalSearch {
  readonly #database: JournalDatabase;
  readonly #prepared = new Map<string, Statement>();

  constructor(database: JournalDatabase) {
    this.#database = database;
  }

  find(query: JournalQuery, limit: number): FoundRows {
    const newest = query.order === 'newest';
    const bounds = this.#boundsOf(query);
    if (bounds === null) return { rows: [], next: null };
    const { walked, looked } = conditions(query);
    const source = walked.text ? 'journal_words CROSS JOIN journal ON sequence = journal_words.rowid' : 'journal';
    const key = walked.text ? 'journal_words.rowid' : 'sequence';
    const order = `ORDER BY ${key} ${newest ? 'DESC' : 'ASC'}`;
    const within = [
      ...walked.of,
      { sql: `${key} > ?`, values: [bounds.above] },
      { sql: `${key} < ?`, values: [bounds.below] },
    ];

    const last = looked.length === 0 ? null : this.#lastLookedAt(walked, within, order, bounds);
    const all = [
      ...within,
      ...(last === null ? [] : [{ sql: `${key} ${newest ? '>=' : '<='} ?`, values: [last] }]),
      ...looked,
    ];
    const found = this.#rows(`SELECT ${rowColumns.join(', ')} FROM ${source} ${where(all)} ${order} LIMIT ?`, [
      ...valuesOf(all),
      limit + 1,
    ]);
    const rows = found.slice(0, limit).map(chainedEntry);
    return { rows, next: found.length > limit ? (rows.at(-1)?.sequence ?? null) : last };
  }

  /** The last row that is looked at for this page, where there are more of them. */
  #lastLookedAt(
    { text, of }: Walked,
    within: readonly Condition[],
    order: string,
    { above, below }: Bounds,
  ): number | null {
    if (of.length > 0) {
      const [table, key] = text ? ['journal_words', 'rowid'] : ['journal', 'sequence'];
      const most = text ? rowsLookedAtByWords : rowsLookedAt;
      const sql = `SELECT ${key} FROM ${table} ${where(within)} ${order} LIMIT 1 OFFSET ${most - 1}`;
      return (this.#rows(sql, valuesOf(within))[0]?.[0] as number | undefined) ?? null;
    }
    // All rows are walked, and their sequences have no gap.
    const [first, end] = this.#rows(
      'SELECT (SELECT min(sequence) FROM journal), (SELECT max(sequence) FROM journal)',
      [],
    )[0] as [number | null, number | null];
    if (first === null || end === null) return null;
    const [from, to] = [Math.max(above + 1, first), Math.min(below - 1, end)];
    if (to - from < rowsLookedAt) return null;
    return order.endsWith('DESC') ? to - rowsLookedAt + 1 : from + rowsLookedAt - 1;
  }

  /** Between which sequences the rows of the asked time stand; null where there are none. */
  #boundsOf({ fromMs, toMs, after, before }: JournalQuery): Bounds | null {
    let [above, below] = [after ?? 0, before ?? Number.MAX_SAFE_INTEGER];
    if (fromMs !== null || toMs !== null) {
      const [first, last] = (this.#rows('SELECT min(block), max(block) FROM span WHERE to_ms >= ? AND from_ms < ?', [
        fromMs ?? Number.MIN_SAFE_INTEGER,
        toMs ?? Number.MAX_SAFE_INTEGER,
      ])[0] ?? [null, null]) as [number | null, number | null];
      if (first === null || last === null) return null;
      above = Math.max(above, first * 1024 - 1);
      below = Math.min(below, (last + 1) * 1024);
    }
    return above + 1 < below ? { above, below } : null;
  }

  #rows(sql: string, values: readonly Value[]): StoredValues[] {
    const statement = this.#prepared.get(sql) ?? this.#database.prepare(sql).raw();
    this.#prepared.set(sql, statement);
    return statement.all(...values) as StoredValues[];
  }
}

/** What is walked in order of sequence, and what is looked at in each row of it. */
function conditions(query: JournalQuery): {
  walked: Walked;
  looked: readonly Condition[];
} {
  const given = byIndex.filter((column) => query[column] !== undefined);
  const text = query.text !== undefined;
  const first = text ? undefined : given[0];
  const of: Condition[] = [];
  if (query.text !== undefined) of.push({ sql: 'journal_words MATCH ?', values: [wordsOf(query.text)] });
  if (first !== undefined) of.push({ sql: `${first} = ?`, values: [asStored(query[first] as Value)] });
  // The sign keeps the engine from walking by another index than the one that was chosen (sqlite.org/optoverview.html section 2).
  const looked: Condition[] = given
    .filter((column) => column !== first)
    .map((column) => ({ sql: `+${column} = ?`, values: [asStored(query[column] as Value)] }));
  if (query.fromMs !== null) looked.push({ sql: '+happened_ms >= ?', values: [query.fromMs] });
  if (query.toMs !== null) looked.push({ sql: '+happened_ms < ?', values: [query.toMs] });
  if (query.audit === false) looked.push({ sql: notOfAudit, values: [] });
  return { walked: { text, of }, looked };
}

/** Each word of two letters or more as a phrase whose last part may go on, and where there is none the phrase that nothing holds: nothing of it is read as syntax (sqlite.org/fts5.html section 3.1). */
const wordsOf = (text: string): string =>
  storedText(text)
    .split(/\s+/)
    .filter((word) => /[\p{L}\p{N}]/u.test(word))
    .map((word) => `"${word.replaceAll('"', '""')}"${/^.$/u.test(word) ? '' : '*'}`)
    .join(' ') || '""';

const asStored = (value: Value): Value => (typeof value === 'string' ? storedText(value) : value);
const where = (conditions: readonly Condition[]): string => `WHERE ${conditions.map(({ sql }) => sql).join(' AND ')}`;
const valuesOf = (conditions: readonly Condition[]): Value[] => conditions.flatMap(({ values }) => values);
