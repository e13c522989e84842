import { open, rename, rm, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { failpoint } from '../../../ports/failpoint';
import { fileSum } from './file-sum';

/** Name under which a file is written before it is whole. */
export const temporaryName = (path: string): string => `${path}.writing`;

/** Gives a file that was written under its temporary name its own, safe against a loss of power. Returns its bytes and their sum. */
export async function finishFile(path: string): Promise<{ readonly bytes: number; readonly sum: string }> {
  await synchronize(temporaryName(path));
  const sum = await fileSum(temporaryName(path));
  if (sum === null)
    throw new CodedError('HISTORY_FILE_GONE', `${path} was written and can't be read; look at the disk`);
  failpoint('sealed-file-before-rename');
  await rename(temporaryName(path), path);
  failpoint('sealed-file-after-rename');
  await synchronize(dirname(path));
  return { bytes: (await stat(path)).size, sum };
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
