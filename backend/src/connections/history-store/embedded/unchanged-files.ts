import { join } from 'node:path';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { fileSum } from './file-sum';
import type { SealedFile } from './manifest';

/** False where the file is not what was sealed; true of files from before sums were kept. */
export async function isUnchanged(folder: string, file: SealedFile): Promise<boolean> {
  return file.sum === null || (await fileSum(join(folder, file.name))) === file.sum;
}

const damagedCode = 'HISTORY_FILE_DAMAGED';

/** Whether a fault is that of `expectUnchanged`. */
export const isOfDamage = (fault: unknown): boolean => fault instanceof CodedError && fault.code === damagedCode;

/**
 * Before files are written anew under a sum of their own: else what a disk spoilt would pass for what was measured.
 * @throws CodedError HISTORY_FILE_DAMAGED
 */
export async function expectUnchanged(folder: string, files: readonly SealedFile[]): Promise<void> {
  for (const file of files) {
    if (await isUnchanged(folder, file)) continue;
    const what = `history file ${file.name} is not what was sealed; rows that belong with it wait as long as its hour is kept; put it back from a backup`;
    throw new CodedError(damagedCode, what);
  }
}
