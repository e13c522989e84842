import type Database from 'libsql';
import { CodedError } from '@ebbline/shared/errors/coded-error';

export type PeopleDatabase = InstanceType<typeof Database>;

/**
 * Forward migrations: step n takes the file from schema version n to n + 1. A step that was ever
 * released is never edited; a change is a new step. There is no way back: an older program refuses a newer file.
 */
const steps: readonly string[] = [
  `
  CREATE TABLE person (
    id TEXT PRIMARY KEY, name TEXT NOT NULL, name_key TEXT NOT NULL UNIQUE,
    role TEXT NOT NULL CHECK (role IN ('viewer', 'operator', 'engineer', 'admin')),
    enabled INTEGER NOT NULL CHECK (enabled IN (0, 1)),
    issuer TEXT, subject TEXT, password_hash TEXT,
    added_ms INTEGER NOT NULL, last_sign_in_ms INTEGER,
    UNIQUE (issuer, subject),
    CHECK ((issuer IS NULL) = (subject IS NULL)),
    CHECK (issuer IS NULL OR password_hash IS NULL)
  ) STRICT;
  CREATE TABLE link (
    digest TEXT PRIMARY KEY, person_id TEXT NOT NULL UNIQUE REFERENCES person (id), ends_ms INTEGER NOT NULL
  ) STRICT;
  CREATE TABLE session (
    digest TEXT PRIMARY KEY, id TEXT NOT NULL UNIQUE, person_id TEXT REFERENCES person (id), name TEXT NOT NULL,
    begun_ms INTEGER NOT NULL, acted_ms INTEGER NOT NULL, station TEXT NOT NULL
  ) STRICT;
  CREATE TABLE token (
    digest TEXT PRIMARY KEY, id TEXT NOT NULL UNIQUE, name TEXT NOT NULL, name_key TEXT NOT NULL, rights TEXT NOT NULL,
    added_by TEXT NOT NULL, added_ms INTEGER NOT NULL, ends_ms INTEGER NOT NULL,
    last_used_ms INTEGER, withdrawn_ms INTEGER
  ) STRICT;
  `,
];

export const peopleSchemaVersion = steps.length;

/**
 * Brings the file to the schema of this program, each step in its own transaction.
 * @throws CodedError PEOPLE_SCHEMA_NEWER where a later program wrote the file
 */
export function migratePeople(database: PeopleDatabase, path: string): void {
  const [version] = database.prepare('PRAGMA user_version').raw().get() as [number];
  if (version > peopleSchemaVersion) {
    throw new CodedError(
      'PEOPLE_SCHEMA_NEWER',
      `${path} has schema version ${version}, this program knows ${peopleSchemaVersion}; start the newer program, or another data folder`,
    );
  }
  for (let step = version; step < peopleSchemaVersion; step++) {
    database.transaction(() => {
      database.exec(`${steps[step] ?? ''}; PRAGMA user_version = ${step + 1};`);
    })();
  }
}
