import type { Audit, AuditEntry } from '../../ports/audit';
import { openPeopleDatabase } from './people-database';
import type { PlainCode } from './people-fault';
import type { PeopleDatabase } from './people-schema';
import { peopleStatements, type PeopleStatements } from './people-statements';
import type { Change, StoredLink, StoredPerson, StoredSession, StoredToken } from './stored';

class Unrecorded extends Error {}

/**
 * All that people.db holds, kept in memory too: who is signed in may look on while the disk is full. A change stands in memory
 * only after its commit, and is committed only after its record in the journal: a kill between leaves a record of what was not
 * done, never something done without a record.
 */
export class PeopleBook {
  readonly people = new Map<string, StoredPerson>();
  readonly links = new Map<string, StoredLink>();
  readonly sessions = new Map<string, StoredSession>();
  readonly tokens = new Map<string, StoredToken>();
  /** Ended in memory while the disk refused to take it; to be tried again, or a restart would bring it back. */
  readonly owed = new Set<string>();
  readonly #database: PeopleDatabase;
  readonly #statements: PeopleStatements;
  readonly #audit: Audit;
  readonly #report: (fault: unknown) => void;
  #trouble: string | null = null;

  constructor(path: string, audit: Audit, report: (fault: unknown) => void) {
    this.#audit = audit;
    this.#report = report;
    this.#database = openPeopleDatabase(path);
    this.#statements = peopleStatements(this.#database);
    for (const row of this.#statements.people()) this.people.set(row.id, row);
    for (const row of this.#statements.links()) this.links.set(row.digest, row);
    for (const row of this.#statements.sessions()) this.sessions.set(row.digest, row);
    for (const row of this.#statements.tokens()) this.tokens.set(row.digest, row);
  }

  /** Writes the record, then the changes; null where both are on the disk. */
  commit(changes: readonly Change[], entry: AuditEntry): PlainCode | null {
    let isRecorded = false;
    try {
      this.#inOne(changes, () => {
        if (!this.#audit.write(entry)) throw new Unrecorded();
        isRecorded = true;
      });
    } catch (fault) {
      if (fault instanceof Unrecorded) return 'JOURNAL_UNAVAILABLE';
      if (isRecorded)
        this.#audit.write({ ...entry, cause: 'actionRefused', reason: `not done, the disk refused: ${entry.reason}` });
      return this.#failed(fault);
    }
    return null;
  }

  /** Writes what needs no record, such as when someone last acted. */
  keep(changes: readonly Change[]): PlainCode | null {
    if (changes.length === 0) return null;
    try {
      this.#inOne(changes, () => undefined);
    } catch (fault) {
      return this.#failed(fault);
    }
    return null;
  }

  /** Changes memory alone: what is known again after a moment, or must hold whatever the disk does. */
  remember(change: Change): void {
    const rows = { link: this.links, session: this.sessions, token: this.tokens };
    if ('drop' in change) rows[change.drop].delete(change.digest);
    else if (change.put === 'person') this.people.set(change.row.id, change.row);
    else if (change.put === 'link') this.links.set(change.row.digest, change.row);
    else if (change.put === 'session') this.sessions.set(change.row.digest, change.row);
    else this.tokens.set(change.row.digest, change.row);
  }

  /** What the disk last refused, until it takes something again; for health. */
  trouble(): string | null {
    return this.#trouble;
  }

  /** Moves what the write-ahead log holds into the file, so that a copy of the one file is whole. */
  close(): void {
    this.#database.pragma('wal_checkpoint(TRUNCATE)');
    this.#database.close();
  }

  #inOne(changes: readonly Change[], last: () => void): void {
    this.#database.transaction(() => {
      for (const change of changes) this.#statements.apply(change);
      last();
    })();
    for (const change of changes) this.remember(change);
    this.#trouble = null;
  }

  #failed(fault: unknown): PlainCode {
    this.#trouble = fault instanceof Error ? fault.message : String(fault);
    this.#report(fault);
    return 'PEOPLE_UNAVAILABLE';
  }
}
