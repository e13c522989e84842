import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { openDuckDb } from './open-duckdb';

/** Name of the database within the store's folder. */
export const databaseFile = 'history.duckdb';

const limits = { threads: 1, memoryMb: 512 };

/**
 * Opens the database of a copied history, which proves that it can be opened and folds its log into it, and gives the names of the
 * sealed files in force. Throws what the engine throws.
 */
export async function keptNames(folder: string): Promise<string[]> {
  const spill = join(folder, 'spill');
  const instance = await openDuckDb(join(folder, databaseFile), spill, limits);
  try {
    const connection = await instance.connect();
    const tables = await connection.runAndReadAll("SELECT 1 FROM duckdb_tables() WHERE table_name = 'sealed_part'");
    const kept =
      tables.currentRowCount === 0
        ? []
        : (
            await connection.runAndReadAll("SELECT name FROM sealed_part WHERE state = 'kept' ORDER BY number")
          ).getRows();
    await connection.run('CHECKPOINT');
    connection.closeSync();
    return kept.map(([name]) => String(name));
  } finally {
    instance.closeSync();
    await rm(spill, { recursive: true, force: true });
  }
}
