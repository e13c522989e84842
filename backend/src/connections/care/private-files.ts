import { constants } from 'node:fs';
import { chmod, copyFile, lstat, mkdir, open, readdir } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';

/** Folders and files that hold passwords' hashes: for their owner alone. */
const folderMode = 0o700;
const fileMode = 0o600;

/** Makes a folder and those above it that are not there, each name of them safe against a loss of power. */
export async function makePrivateFolder(path: string): Promise<void> {
  const first = await mkdir(resolve(path), { recursive: true, mode: folderMode });
  if (first === undefined) return;
  for (let made = resolve(path); made.length >= first.length; made = dirname(made)) await synchronize(dirname(made));
}

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

/** Makes sure that which names stand in a folder, and in every one below it, is on the disk. */
export async function synchronizeFolders(folder: string): Promise<void> {
  for (const entry of await readdir(folder, { withFileTypes: true }))
    if (entry.isDirectory()) await synchronizeFolders(join(folder, entry.name));
  await synchronize(folder);
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
