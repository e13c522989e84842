import { constants } from 'node:fs';
import { chmod, copyFile, lstat, mkdir, open, readdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/** Folders and files that hold passwords' hashes: for their owner alone. */
const folderMode = 0o700;
const fileMode = 0o600;

export const makePrivateFolder = (path: string): Promise<unknown> => mkdir(path, { recursive: true, mode: folderMode });

/** Copies one file, with the folders above it, and makes it safe against a loss of power. */
export async function copyPrivately(from: string, to: string): Promise<void> {
  await makePrivateFolder(dirname(to));
  await copyFile(from, to, constants.COPYFILE_FICLONE);
  await finishPrivately(to);
}

/** Makes a file that was written by another hand its owner's alone, and safe on the disk. */
export async function finishPrivately(path: string): Promise<void> {
  await chmod(path, fileMode);
  await synchronize(path);
}

/** Makes sure that what was written to a file, or which names stand in a folder, is on the disk. */
export async function synchronize(path: string): Promise<void> {
  const handle = await open(path, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Every file below a folder, by its path within it with `/`, in order of name; without links, which lead elsewhere. */
export async function filesBelow(folder: string, within = ''): Promise<string[]> {
  const found: string[] = [];
  for (const name of (await readdir(join(folder, within))).sort()) {
    const path = within === '' ? name : `${within}/${name}`;
    const what = await lstat(join(folder, path));
    if (what.isDirectory()) found.push(...(await filesBelow(folder, path)));
    if (what.isFile()) found.push(path);
  }
  return found;
}
