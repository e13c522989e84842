/**
 * Schema 3: facts beside the columns, look-ups that stay quick over a year of rows, and rows that are sealed into files outside.
 * A step that was released is never edited.
 */
const rowColumns = `
  sequence INTEGER PRIMARY KEY,
  recorded_ms INTEGER NOT NULL,
  happened_ms INTEGER NOT NULL,
  kind TEXT NOT NULL,
  cause TEXT, alarm TEXT, unit TEXT, hall TEXT, entry TEXT, from_state TEXT, to_state TEXT,
  priority INTEGER, value REAL, limit_value REAL, unit_of_measure TEXT, place TEXT, folded_under TEXT,
  since_ms INTEGER, actor TEXT, station TEXT, reason TEXT, record TEXT, facts TEXT,
  previous_hash TEXT NOT NULL,
  hash TEXT NOT NULL`;

/** A restart looks up every change of a setting. */
const settings = `CREATE INDEX journal_settings ON journal (sequence) WHERE cause = 'settingChanged';`;

const indices = ['unit', 'hall', 'entry', 'alarm', 'actor', 'kind', 'priority']
  .map((column) => `CREATE INDEX journal_${column} ON journal (${column}) WHERE ${column} IS NOT NULL;`)
  .join('\n');

/** What is searched for words; `row` is NEW, OLD or the table. */
const wordsOf = (row: string): string =>
  ['alarm', 'place', 'actor', 'station', 'cause', 'reason']
    .map((column) => `coalesce(${row}.${column}, '')`)
    .join(" || ' ' || ");

/** Words are kept without the text itself (sqlite.org/fts5.html section 4.4.3); it stands in the row. */
const words = `
  CREATE VIRTUAL TABLE journal_words USING fts5(words, content='', contentless_delete=1);
  INSERT INTO journal_words (rowid, words) SELECT sequence, ${wordsOf('journal')} FROM journal;
  CREATE TRIGGER journal_keeps_words AFTER INSERT ON journal
    BEGIN INSERT INTO journal_words (rowid, words) VALUES (NEW.sequence, ${wordsOf('NEW')}); END;
  CREATE TRIGGER journal_drops_words AFTER DELETE ON journal
    BEGIN DELETE FROM journal_words WHERE rowid = OLD.sequence; END;`;

/** From when to when the rows of each 1024 happened: rows stand in order of sequence, and clocks may step. */
const spans = `
  CREATE TABLE span (block INTEGER PRIMARY KEY, from_ms INTEGER NOT NULL, to_ms INTEGER NOT NULL) STRICT;
  INSERT INTO span SELECT sequence >> 10, min(happened_ms), max(happened_ms) FROM journal GROUP BY 1;
  CREATE TRIGGER journal_keeps_spans AFTER INSERT ON journal
    BEGIN
      INSERT INTO span VALUES (NEW.sequence >> 10, NEW.happened_ms, NEW.happened_ms)
      ON CONFLICT (block) DO UPDATE SET from_ms = min(from_ms, excluded.from_ms), to_ms = max(to_ms, excluded.to_ms);
    END;`;

/**
 * Rows leave the journal only into an archive that was recorded before: it begins behind the one before it, and its hashes are
 * those of the rows. What a restart still needs of them is kept whole. Neither is ever changed.
 */
const archives = `
  CREATE TABLE archive (
    first INTEGER PRIMARY KEY,
    last INTEGER NOT NULL,
    previous_hash TEXT NOT NULL,
    hash TEXT NOT NULL,
    file TEXT NOT NULL,
    sha256 TEXT NOT NULL,
    sealed_ms INTEGER NOT NULL
  ) STRICT;
  CREATE TABLE kept (${rowColumns}) STRICT;
  CREATE TRIGGER archive_refuses_others BEFORE INSERT ON archive
    WHEN NEW.first IS NOT 1 + coalesce((SELECT max(last) FROM archive), 0) OR NEW.last < NEW.first
      OR NEW.previous_hash IS NOT (SELECT previous_hash FROM journal WHERE sequence = NEW.first)
      OR NEW.hash IS NOT (SELECT hash FROM journal WHERE sequence = NEW.last)
    BEGIN SELECT RAISE(ABORT, 'the journal is append-only: an archive must hold its oldest rows'); END;
  CREATE TRIGGER archive_refuses_update BEFORE UPDATE ON archive
    BEGIN SELECT RAISE(ABORT, 'the journal is append-only: UPDATE refused'); END;
  CREATE TRIGGER archive_refuses_delete BEFORE DELETE ON archive
    BEGIN SELECT RAISE(ABORT, 'the journal is append-only: DELETE refused'); END;
  CREATE TRIGGER kept_refuses_others BEFORE INSERT ON kept
    WHEN NEW.hash IS NOT (SELECT hash FROM journal WHERE sequence = NEW.sequence)
    BEGIN SELECT RAISE(ABORT, 'the journal is append-only: only its own rows are kept'); END;
  CREATE TRIGGER kept_refuses_update BEFORE UPDATE ON kept
    BEGIN SELECT RAISE(ABORT, 'the journal is append-only: UPDATE refused'); END;
  CREATE TRIGGER kept_refuses_delete BEFORE DELETE ON kept
    BEGIN SELECT RAISE(ABORT, 'the journal is append-only: DELETE refused'); END;
  DROP TRIGGER journal_refuses_delete;
  CREATE TRIGGER journal_refuses_delete BEFORE DELETE ON journal
    WHEN OLD.sequence > coalesce((SELECT max(last) FROM archive), 0)
    BEGIN SELECT RAISE(ABORT, 'the journal is append-only: DELETE refused'); END;
  DROP TRIGGER journal_refuses_gaps;
  CREATE TRIGGER journal_refuses_gaps BEFORE INSERT ON journal
    WHEN NEW.sequence IS NOT
      1 + coalesce((SELECT max(sequence) FROM journal), (SELECT max(last) FROM archive), 0)
    BEGIN SELECT RAISE(ABORT, 'the journal is append-only: sequence must follow the last one'); END;`;

export const schema3 = `ALTER TABLE journal ADD COLUMN facts TEXT; ${indices} ${settings} ${words} ${spans} ${archives}`;
