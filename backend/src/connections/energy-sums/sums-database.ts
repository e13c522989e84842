import { rmSync } from 'node:fs';
import Database from 'libsql';

export type SumsDatabase = InstanceType<typeof Database>;

/** Another number is another layout of the file or of a row of sums: the file is begun anew. */
export const sumsVersion = 1;

const schema = `
  CREATE TABLE source (text TEXT NOT NULL) STRICT;
  CREATE TABLE recipe (id INTEGER PRIMARY KEY, text TEXT NOT NULL UNIQUE) STRICT;
  CREATE TABLE day (
    holder TEXT NOT NULL, start_ms INTEGER NOT NULL, end_ms INTEGER NOT NULL,
    recipe INTEGER NOT NULL, guard INTEGER NOT NULL, sums BLOB NOT NULL,
    PRIMARY KEY (holder, start_ms)
  ) STRICT, WITHOUT ROWID;
  CREATE TABLE hours (
    holder TEXT NOT NULL, start_ms INTEGER NOT NULL, end_ms INTEGER NOT NULL,
    recipe INTEGER NOT NULL, guard INTEGER NOT NULL, sums BLOB NOT NULL,
    PRIMARY KEY (holder, start_ms)
  ) STRICT, WITHOUT ROWID;
`;

/**
 * Opens the file, and begins it anew where it is damaged, of another version, or made from another history than `source`. A commit
 * survives a kill, and a loss of power only where it is told to be on the disk at once (sqlite.org/pragma.html, synchronous).
 * Throws what the disk throws where not even a new file can be made.
 */
export function openSumsDatabase(path: string, source: string): SumsDatabase {
  try {
    return opened(path, source);
  } catch {
    removeSums(path);
    return opened(path, source);
  }
}

export function removeSums(path: string): void {
  for (const end of ['', '-wal', '-shm']) rmSync(`${path}${end}`, { force: true });
}

function opened(path: string, source: string): SumsDatabase {
  const database = new Database(path);
  try {
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = NORMAL');
    const [found] = database.prepare('PRAGMA user_version').raw().get() as [number];
    if (found === 0) begin(database, source);
    const [kept] = database.prepare('SELECT text FROM source').raw().get() as [string];
    if ((found !== 0 && found !== sumsVersion) || kept !== source)
      throw new Error('sums of another version or history');
    return database;
  } catch (fault) {
    database.close();
    throw fault;
  }
}

function begin(database: SumsDatabase, source: string): void {
  database.transaction(() => {
    database.exec(schema);
    database.prepare('INSERT INTO source (text) VALUES (?)').run(source);
    database.exec(`PRAGMA user_version = ${sumsVersion}`);
  })();
}
