import { join } from 'node:path';
import type { DuckDBConnection } from '@duckdb/node-api';
import { failpoint } from '../../../ports/failpoint';
import { finishFile, temporaryName } from './durable-file';
import type { Manifest, SealedFile, WrittenFile } from './manifest';
import { copyToParquet } from './sealed-sql';

/** Where sealed files are written, and by what. */
export interface Sealing {
  readonly connection: DuckDBConnection;
  readonly folder: string;
  readonly manifest: Manifest;
  /** Most values that are put in unit order at once. */
  readonly valuesAtOnce: number;
}

/** Some 200 MB, well within memory with the copies that ordering makes; twice as many cost twice the CPU each. */
export const defaultValuesAtOnce = 25e6;

/** Files that are whole on the disk but not yet in force, and what they take the place of. */
export interface Sealed {
  readonly written: readonly WrittenFile[];
  readonly replaced: readonly SealedFile[];
}

/** Rows in unit order; a row group of a few units lets a read skip the others. */
const rowGroup = { seconds: 30_720, minutes: 23_040 } as const;

/** Names a file in the manifest, writes the ordered rows of `source` to it, and makes it safe on the disk. */
export async function writeSealed(
  { connection, folder, manifest }: Sealing,
  what: Omit<SealedFile, 'name' | 'bytes' | 'sum'>,
  source: string,
): Promise<WrittenFile> {
  const name = await manifest.announce(what);
  failpoint('sealed-file-announced');
  await connection.run(copyToParquet(source, temporaryName(join(folder, name)), rowGroup[what.kind]));
  return { name, ...(await finishFile(join(folder, name))) };
}
