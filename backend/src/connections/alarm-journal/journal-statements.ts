import type { JournalDatabase } from './journal-database';
import { rowColumns, storedValues, type ChainedEntry } from './journal-entry';
import { settingCause } from './setting-entry';
import type { StandingRow } from './standing-alarms';
import type { JournalHead } from './verify-journal';

export interface JournalStatements {
  insert(entry: ChainedEntry): void;
  setHead(head: JournalHead): void;
  putStanding(row: StandingRow): void;
  removeStanding(alarm: string): void;
  /** Records of values that people typed from a time on, in order of sequence, sealed ones too. */
  handRecords(fromMs: number): string[];
  /** Records of changed settings, in order of sequence, sealed ones too. */
  settingRecords(): string[];
  /** Records of settings that were proposed, and of those withdrawn, as above. */
  proposalRecords(): [cause: string, record: string][];
}

/** Every statement by which the journal is written. Raw arrays, since the client adds a field of its own to row objects. */
export function journalStatements(database: JournalDatabase): JournalStatements {
  const insert = database.prepare(
    `INSERT INTO journal (${rowColumns.join(', ')}) VALUES (${rowColumns.map(() => '?').join(', ')})`,
  );
  const setHead = database.prepare('INSERT OR REPLACE INTO head (id, sequence, hash) VALUES (1, ?, ?)');
  const put = database.prepare('INSERT OR REPLACE INTO standing (alarm, sequence, record) VALUES (?, ?, ?)');
  const remove = database.prepare('DELETE FROM standing WHERE alarm = ?');
  const typed = (table: string): string =>
    `SELECT sequence, record FROM ${table} WHERE cause IN ('handEntered', 'handCorrected') AND happened_ms >= ?1`;
  const hand = database.prepare(`${typed('kept')} UNION ALL ${typed('journal')} ORDER BY sequence`).raw();
  const set = (table: string): string =>
    `SELECT sequence, record FROM ${table} WHERE cause = '${settingCause}' AND record IS NOT NULL`;
  const settings = database.prepare(`${set('kept')} UNION ALL ${set('journal')} ORDER BY sequence`).raw();
  const asked = (table: string): string =>
    `SELECT sequence, cause, record FROM ${table}
     WHERE cause IN ('settingProposed', 'settingWithdrawn') AND record IS NOT NULL`;
  const proposals = database.prepare(`${asked('kept')} UNION ALL ${asked('journal')} ORDER BY sequence`).raw();

  return {
    insert: (entry) => void insert.run(...storedValues(entry)),
    setHead: ({ sequence, hash }) => void setHead.run(sequence, hash),
    putStanding: ({ alarm, sequence, record }) => void put.run(alarm, sequence, record),
    removeStanding: (alarm) => void remove.run(alarm),
    handRecords: (fromMs) => (hand.all(fromMs) as [number, string][]).map(([, record]) => record),
    settingRecords: () => (settings.all() as [number, string][]).map(([, record]) => record),
    proposalRecords: () => (proposals.all() as [number, string, string][]).map(([, cause, record]) => [cause, record]),
  };
}
