import { statSync } from 'node:fs';

/** Bit of a file's mode: others than its owner and group may read it (POSIX, <sys/stat.h>, S_IROTH). */
const OTHERS_READ = 0o004;

/** Whether any user of this machine may read the file. False where it is not there, or modes mean nothing (Windows). */
export function isReadableByAll(path: string): boolean {
  if (process.platform === 'win32') return false;
  const found = statSync(path, { throwIfNoEntry: false });
  return found !== undefined && (found.mode & OTHERS_READ) !== 0;
}

/** One line for each file with a secret that any user of this machine may read; the file's name only. */
export const openSecretWarnings = (files: readonly { readonly variable: string; readonly path: string }[]): string[] =>
  files
    .filter(({ path }) => isReadableByAll(path))
    .map(
      ({ variable }) => `${variable}: every user of this machine may read that file; take that right away (chmod o-r).`,
    );
