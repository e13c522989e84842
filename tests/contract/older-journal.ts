import { renameSync, rmSync } from 'node:fs';
import Database from 'libsql';
import { entryColumns } from '../../backend/src/connections/alarm-journal/journal-entry';
import { migrateJournal } from '../../backend/src/connections/alarm-journal/journal-schema';

const columns = ['sequence', ...entryColumns.map(([column]) => column), 'previous_hash', 'hash'].join(', ');

/** Puts in the place of a closed journal the file that a former program would have written, with the same rows. They must have no facts. */
export function rewriteAsSchema(version: number, file: string): void {
  const older = `${file}.older`;
  const database = new Database(older);
  try {
    migrateJournal(database, older, version);
    database.prepare('ATTACH ? AS newer').run(file);
    database.exec(`
      INSERT INTO journal (${columns}) SELECT ${columns} FROM newer.journal ORDER BY sequence;
      INSERT INTO head SELECT * FROM newer.head;
      INSERT INTO standing SELECT * FROM newer.standing;
      DETACH newer;
    `);
  } finally {
    database.close();
  }
  for (const beside of ['-wal', '-shm']) rmSync(`${file}${beside}`, { force: true });
  renameSync(older, file);
}
