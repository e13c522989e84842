import { open, rename, rm, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { failpoint } from '../../../ports/failpoint';

/** Name under which a file is written before it is whole. */
export const temporaryName = (path: string): string => `${path}.writing`;

/** Gives a file that was written under its temporary name its own, safe against a loss of power. Returns its bytes. */
export async function finishFile(path: string): Promise<number> {
  await synchronize(temporaryName(path));
  failpoint('sealed-file-before-rename');
  await rename(temporaryName(path), path);
  failpoint('sealed-file-after-rename');
  await synchronize(dirname(path));
  return (await stat(path)).size;
}

/** Removes a file whole or half-written; one that is not there is no fault. */
export async function removeFile(path: string): Promise<void> {
  await rm(path, { force: true });
  failpoint('deletion-mid-file');
  await rm(temporaryName(path), { force: true });
}

async function synchronize(path: string): Promise<void> {
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
