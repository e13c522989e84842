import { open, readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { databaseFile } from './kept-names';

/** What tells one state of the database's file from another without reading all of it. */
export interface DatabaseMark {
  readonly changed: bigint;
  readonly bytes: bigint;
  /** The file's headers, which every folding of the log rewrites. */
  readonly headers: string;
  /** Log beside it: 0 where there is none. It grows by commits, and begins anew when it was folded. */
  readonly logBytes: bigint;
}

/** The file begins with three headers of 4 KB each. */
const headerBytes = 12_288;
/** Two writes within one tick of the file system's clock bear one time; a file at rest for longer has none to come, ms. */
const restMs = 50;

/** Null while the log is being folded into the file, or the file was written just now. */
export async function databaseMark(folder: string): Promise<DatabaseMark | null> {
  const path = join(folder, databaseFile);
  const others = (await readdir(folder)).filter((name) => name.startsWith(`${databaseFile}.`));
  if (others.some((name) => name !== `${databaseFile}.wal`)) return null;
  const { mtimeNs, mtimeMs, size } = await stat(path, { bigint: true });
  if (Math.abs(Date.now() - Number(mtimeMs)) < restMs) return null;
  const log = await stat(`${path}.wal`, { bigint: true }).catch(() => null);
  return { changed: mtimeNs, bytes: size, headers: await headersOf(path), logBytes: log?.size ?? 0n };
}

/** Whether nothing but commits came in between: they make the log longer, and one that is cut off is left out. */
export const sameDatabase = (before: DatabaseMark, after: DatabaseMark): boolean =>
  before.changed === after.changed &&
  before.bytes === after.bytes &&
  before.headers === after.headers &&
  after.logBytes >= before.logBytes;

async function headersOf(path: string): Promise<string> {
  const handle = await open(path, 'r');
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(headerBytes), 0, headerBytes, 0);
    return buffer.toString('base64', 0, bytesRead);
  } finally {
    await handle.close();
  }
}
