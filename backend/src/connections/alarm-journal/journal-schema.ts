import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { JournalDatabase } from './journal-database';
import { schema3 } from './journal-schema-3';
import { schema4 } from './journal-schema-4';
import { schema5 } from './journal-schema-5';
import { schema6 } from './journal-schema-6';

/**
 * Forward migrations: step n takes the file from schema version n to n + 1. A step that was ever
 * released is never edited; a change is a new step. There is no way back: an older program refuses a newer file.
 */
const steps: readonly string[] = [
  `
  CREATE TABLE journal (
    sequence INTEGER PRIMARY KEY,
    recorded_ms INTEGER NOT NULL,
    happened_ms INTEGER NOT NULL,
    kind TEXT NOT NULL CHECK (kind IN ('transition', 'action', 'system')),
    cause TEXT, alarm TEXT, unit TEXT, hall TEXT, entry TEXT, from_state TEXT, to_state TEXT,
    priority INTEGER, value REAL, limit_value REAL, unit_of_measure TEXT, place TEXT, folded_under TEXT,
    since_ms INTEGER, actor TEXT, station TEXT, reason TEXT, record TEXT,
    previous_hash TEXT NOT NULL,
    hash TEXT NOT NULL
  ) STRICT;
  CREATE INDEX journal_happened ON journal (happened_ms);
  CREATE TRIGGER journal_refuses_update BEFORE UPDATE ON journal
    BEGIN SELECT RAISE(ABORT, 'the journal is append-only: UPDATE refused'); END;
  CREATE TRIGGER journal_refuses_delete BEFORE DELETE ON journal
    BEGIN SELECT RAISE(ABORT, 'the journal is append-only: DELETE refused'); END;
  CREATE TRIGGER journal_refuses_gaps BEFORE INSERT ON journal
    WHEN NEW.sequence IS NOT (SELECT coalesce(max(sequence), 0) + 1 FROM journal)
    BEGIN SELECT RAISE(ABORT, 'the journal is append-only: sequence must follow the last one'); END;
  CREATE TABLE head (
    id INTEGER PRIMARY KEY CHECK (id = 1),
    sequence INTEGER NOT NULL,
    hash TEXT NOT NULL
  ) STRICT;
  CREATE TABLE standing (
    alarm TEXT PRIMARY KEY,
    sequence INTEGER NOT NULL,
    record TEXT NOT NULL
  ) STRICT;
  `,
  // Values that people typed, found again without a look at every row.
  `
  CREATE INDEX journal_hand ON journal (happened_ms, sequence) WHERE cause IN ('handEntered', 'handCorrected');
  `,
  schema3,
  schema4,
  schema5,
  schema6,
];

export const journalSchemaVersion = steps.length;

/**
 * Brings the file to the schema of this program, each step in its own transaction.
 * @param to an older schema, for tests of what comes from it
 * @throws CodedError JOURNAL_SCHEMA_NEWER where a later program wrote the file
 */
export function migrateJournal(database: JournalDatabase, path: string, to = journalSchemaVersion): void {
  const [version] = database.prepare('PRAGMA user_version').raw().get() as [number];
  if (version > journalSchemaVersion) {
    throw new CodedError(
      'JOURNAL_SCHEMA_NEWER',
      `${path} has schema version ${version}, this program knows ${journalSchemaVersion}; start the newer program, or another data folder`,
    );
  }
  for (let step = version; step < to; step++) {
    database.transaction(() => {
      database.exec(`${steps[step] ?? ''}; PRAGMA user_version = ${step + 1};`);
    })();
  }
}
