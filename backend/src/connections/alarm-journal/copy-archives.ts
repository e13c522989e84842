import { existsSync } from 'node:fs';
import { copyFile, mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import Database from 'libsql';
import { archiveFolderName } from './archive-file';
import { journalReading } from './journal-reading';

/**
 * Copies the sealed files that a copied journal names. Sealed files never change and are never removed, so those of a copy are
 * there however long ago it was made.
 * Gives back the names of those that are not there: a back-up of a damaged folder is worth more than none.
 * @param copied the copy of the journal
 * @param from data folder
 * @param to folder in which the copy lies
 * @param copy how a file is copied
 * @throws whatever reading and writing throw
 */
export async function copyArchives(
  copied: string,
  from: string,
  to: string,
  copy: (from: string, to: string) => Promise<void> = copyFile,
): Promise<readonly string[]> {
  const database = new Database(copied, { readonly: true });
  let files: readonly string[];
  try {
    const [version] = database.prepare('PRAGMA user_version').raw().get() as [number];
    files = journalReading(database, version)
      .archives()
      .map(({ file }) => file);
  } finally {
    database.close();
  }
  if (files.length > 0) await mkdir(join(to, archiveFolderName), { recursive: true, mode: 0o700 });
  const lacking: string[] = [];
  for (const file of files) {
    if (existsSync(join(from, archiveFolderName, file)))
      await copy(join(from, archiveFolderName, file), join(to, archiveFolderName, file));
    else lacking.push(file);
  }
  return lacking;
}
