import { existsSync } from 'node:fs';
import Database from 'libsql';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import type { JournalDatabase } from './journal-database';
import { journalSchemaVersion } from './journal-schema';
import { journalReading } from './journal-reading';
import { archiveFolderOf } from './archive-file';
import { verifyChain } from './verify-chain';
import type { JournalHead } from './verify-journal';

/** What a walk over a journal file found. */
export interface InspectedJournal {
  readonly schemaVersion: number;
  readonly rows: number;
  readonly head: JournalHead;
  /** Rows of them that stand in sealed files beside the journal. */
  readonly sealedRows: number;
  /** Sequence of the first row that is not as it was written, or null where the chain is whole. */
  readonly brokenAt: number | null;
  /** What is wrong with a sealed file, for a person; null where nothing is. */
  readonly archiveFault: string | null;
}

export interface JournalUnread {
  readonly code: 'JOURNAL_FILE_MISSING' | 'JOURNAL_FILE_NOT_ONE' | 'JOURNAL_FILE_NEWER' | 'JOURNAL_FILE_DAMAGED';
  readonly message: string;
}

/** Milliseconds that a commit of a running program is waited for. */
const busyMs = 5000;

/**
 * Walks the chain of a journal file and of its sealed files without changing a row: of a copy, or of the file that a program is writing to. All is
 * read within one transaction, so that rows committed meanwhile are left out (sqlite.org/isolation.html).
 */
export function inspectJournal(path: string): Result<InspectedJournal, JournalUnread> {
  if (!existsSync(path)) {
    return unread('JOURNAL_FILE_MISSING', `${path} is not there; name the journal file, or set EBBLINE_DATA`);
  }
  let database: JournalDatabase | null = null;
  try {
    database = new Database(path, { timeout: busyMs });
    database.exec('PRAGMA query_only = ON; BEGIN');
    return inspected(database, path);
  } catch (fault) {
    const said = fault instanceof Error ? fault.message : String(fault);
    return unread(
      'JOURNAL_FILE_DAMAGED',
      `${path} cannot be read as a journal (${said}); check that it is one and who may read it, and else take a back-up`,
    );
  } finally {
    endReading(database);
  }
}

/** The client lets go of a closed file only once its statements are collected; what they hold of it is given up at once. */
function endReading(database: JournalDatabase | null): void {
  if (database?.inTransaction === true) database.exec('ROLLBACK');
  database?.close();
}

function inspected(database: JournalDatabase, path: string): Result<InspectedJournal, JournalUnread> {
  const [schemaVersion] = database.prepare('PRAGMA user_version').raw().get() as [number];
  const tables = database.prepare("SELECT name FROM sqlite_master WHERE name IN ('journal', 'head', 'standing')").raw();
  if (schemaVersion === 0 || tables.all().length !== 3) {
    return unread('JOURNAL_FILE_NOT_ONE', `${path} holds no journal; name the journal.sqlite of a data folder`);
  }
  if (schemaVersion > journalSchemaVersion) {
    const versions = `schema version ${schemaVersion}, this program knows ${journalSchemaVersion}`;
    return unread('JOURNAL_FILE_NEWER', `${path} has ${versions}; use the newer program`);
  }
  const [page] = database.prepare('PRAGMA integrity_check(1)').raw().get() as [string];
  if (page !== 'ok') {
    return unread('JOURNAL_FILE_DAMAGED', `${path} is damaged as a file (${page}); take a back-up in its place`);
  }
  const reading = journalReading(database, schemaVersion);
  return ok({ schemaVersion, head: reading.head(), ...verifyChain(reading, archiveFolderOf(path)) });
}

const unread = (code: JournalUnread['code'], message: string): Result<never, JournalUnread> => fail({ code, message });
