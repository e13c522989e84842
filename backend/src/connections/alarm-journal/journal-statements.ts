import { notOfAudit } from './audit-entry';
import type { JournalDatabase } from './journal-database';
import { chainedEntry, entryColumns, storedValues, type ChainedEntry, type StoredValues } from './journal-entry';
import type { StandingRow } from './standing-alarms';
import { emptyHead, type JournalHead } from './verify-journal';

type PageOf = (after: number, fromMs: number, toMs: number, limit: number) => ChainedEntry[];

export interface JournalStatements {
  insert(entry: ChainedEntry): void;
  setHead(head: JournalHead): void;
  head(): JournalHead;
  putStanding(row: StandingRow): void;
  removeStanding(alarm: string): void;
  /** In the order in which they last changed. */
  standing(): StandingRow[];
  /** Rows that happened in [fromMs, toMs), after a sequence, in order of sequence. */
  readonly page: PageOf;
  readonly pageWithoutAudit: PageOf;
  /** Records of values that people typed from a time on, in order of sequence. */
  handRecords(fromMs: number): string[];
  /** All rows, fetched piece by piece. */
  all(): Iterable<ChainedEntry>;
}

const columns = ['sequence', ...entryColumns.map(([column]) => column), 'previous_hash', 'hash'];
const fetchedAtOnce = 1000;

/** Every statement that the journal runs. Raw arrays, since the client adds a field of its own to row objects. */
export function journalStatements(database: JournalDatabase): JournalStatements {
  const select = `SELECT ${columns.join(', ')} FROM journal`;
  const insert = database.prepare(
    `INSERT INTO journal (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
  );
  const setHead = database.prepare('INSERT OR REPLACE INTO head (id, sequence, hash) VALUES (1, ?, ?)');
  const head = database.prepare('SELECT sequence, hash FROM head').raw();
  const put = database.prepare('INSERT OR REPLACE INTO standing (alarm, sequence, record) VALUES (?, ?, ?)');
  const remove = database.prepare('DELETE FROM standing WHERE alarm = ?');
  const standing = database.prepare('SELECT alarm, sequence, record FROM standing ORDER BY sequence').raw();
  const after = database.prepare(`${select} WHERE sequence > ? ORDER BY sequence LIMIT ?`).raw();
  const pageWhere = (condition: string): PageOf => {
    const where = `WHERE sequence > ? AND happened_ms >= ? AND happened_ms < ? AND ${condition}`;
    const page = database.prepare(`${select} ${where} ORDER BY sequence LIMIT ?`).raw();
    return (...query) => (page.all(...query) as StoredValues[]).map(chainedEntry);
  };

  const hand = database
    .prepare(
      `SELECT record FROM journal WHERE cause IN ('handEntered', 'handCorrected') AND happened_ms >= ? ORDER BY sequence`,
    )
    .raw();

  return {
    insert: (entry) => void insert.run(...storedValues(entry)),
    setHead: ({ sequence, hash }) => void setHead.run(sequence, hash),
    head() {
      const found = head.get() as [number, string] | undefined;
      return found === undefined ? emptyHead : { sequence: found[0], hash: found[1] };
    },
    putStanding: ({ alarm, sequence, record }) => void put.run(alarm, sequence, record),
    removeStanding: (alarm) => void remove.run(alarm),
    standing: () =>
      (standing.all() as [string, number, string][]).map(([alarm, sequence, record]) => ({ alarm, sequence, record })),
    page: pageWhere('TRUE'),
    pageWithoutAudit: pageWhere(notOfAudit),
    handRecords: (fromMs) => (hand.all(fromMs) as [string][]).map(([record]) => record),
    *all() {
      let last = Number.MIN_SAFE_INTEGER;
      for (;;) {
        const rows = (after.all(last, fetchedAtOnce) as StoredValues[]).map(chainedEntry);
        yield* rows;
        last = rows.at(-1)?.sequence ?? last;
        if (rows.length < fetchedAtOnce) return;
      }
    },
  };
}
