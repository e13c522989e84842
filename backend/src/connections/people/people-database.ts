import { chmodSync, closeSync, openSync } from 'node:fs';
import Database from 'libsql';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { migratePeople, type PeopleDatabase } from './people-schema';

/** Name of the file within the data folder. */
export const peopleFile = 'people.db';

/** For its owner alone: it holds hashes of passwords. The log beside it takes its mode from it (sqlite.org/wal.html). */
const privateMode = 0o600;

/**
 * Opens the file, or begins it, so that a commit is on the disk before it returns (sqlite.org/pragma.html, synchronous).
 * @param path the file, or `:memory:`
 * @throws CodedError PEOPLE_OPEN_FAILED, PEOPLE_SCHEMA_NEWER, PEOPLE_DAMAGED
 */
export function openPeopleDatabase(path: string): PeopleDatabase {
  let database: PeopleDatabase | null = null;
  try {
    if (path !== ':memory:') makePrivate(path);
    database = new Database(path);
    const [page] = database.prepare('PRAGMA quick_check(1)').raw().get() as [string];
    if (page !== 'ok') throw damaged(path, page);
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    database.pragma('foreign_keys = ON');
    migratePeople(database, path);
    return database;
  } catch (cause) {
    database?.close();
    throw toCodedError(path, cause);
  }
}

function makePrivate(path: string): void {
  closeSync(openSync(path, 'a', privateMode));
  chmodSync(path, privateMode);
}

function toCodedError(path: string, cause: unknown): CodedError {
  if (cause instanceof CodedError) return cause;
  const said = cause instanceof Error ? cause.message : String(cause);
  if (/not a database|malformed|corrupt/i.test(said)) return damaged(path, said, cause);
  const message = `cannot open ${path} (${said}); check that the folder is writable and the file belongs to the user that runs Ebbline`;
  return new CodedError('PEOPLE_OPEN_FAILED', message, { cause });
}

const damaged = (path: string, said: string, cause?: unknown): CodedError =>
  new CodedError(
    'PEOPLE_DAMAGED',
    `${path} is damaged (${said}); keep it aside and restore a back-up. Without one, move it away: the next start begins anew and prints a link for the first admin`,
    { cause },
  );
