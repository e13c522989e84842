import { existsSync } from 'node:fs';
import { readdir, rename, rm, rmdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { BackUpManifest } from '@ebbline/shared/contract/back-up-manifest';
import { digestFile } from './digest-file';
import { copyPrivately, makePrivateFolder, synchronize, synchronizeFolders } from './private-files';

/** While this folder stands in the data folder a restore has not ended, and no program is started (backend/build). */
export const unfinishedName = 'restore-unfinished';

/** What a data folder may hold and still be empty: what the program builds, and its lock. */
const holdsNothing = (name: string): boolean => name === 'build' || name.startsWith('lock.db');

/** Why nothing may be restored into the data folder, or null. */
export async function refusedDataFolder(folder: string): Promise<string | null> {
  if (!existsSync(folder)) return null;
  const names = (await readdir(folder)).filter((name) => !holdsNothing(name));
  if (names.includes(unfinishedName))
    return `an earlier restore into ${folder} did not end; remove all but build from it, and restore again`;
  return names.length === 0
    ? null
    : `the data folder ${folder} is not empty (${names.slice(0, 3).join(', ')}${names.length > 3 ? ', …' : ''}), and nothing is written over; set EBBLINE_DATA to a new folder`;
}

/**
 * Copies every file of a back-up to a folder within the data folder, on the same disk, and compares each copy with the
 * manifest. Returns that folder, and the names that are missing or not as they were written.
 */
export async function stageFiles(
  backUp: string,
  manifest: BackUpManifest,
  dataFolder: string,
): Promise<{ readonly staged: string; readonly damaged: readonly string[] }> {
  const staged = join(dataFolder, unfinishedName);
  await makePrivateFolder(staged);
  const damaged: string[] = [];
  for (const { name, bytes, sha256 } of manifest.files) {
    if (!existsSync(join(backUp, name))) {
      damaged.push(name);
      continue;
    }
    await copyPrivately(join(backUp, name), join(staged, name));
    const copied = await digestFile(join(staged, name));
    if (copied.bytes !== bytes || copied.sha256 !== sha256) damaged.push(name);
  }
  return { staged, damaged };
}

/** Moves what was staged to its place, `last` as the last of all, and lets the data folder be used. */
export async function enforceStaged(staged: string, dataFolder: string, last: string): Promise<void> {
  await synchronizeFolders(staged);
  const names = (await readdir(staged)).filter((name) => name !== last);
  for (const name of [...names, last]) await rename(join(staged, name), join(dataFolder, name));
  await synchronize(dataFolder);
  await rmdir(staged);
  await synchronize(dataFolder);
}

export const dropStaged = (dataFolder: string): Promise<void> =>
  rm(join(dataFolder, unfinishedName), { recursive: true, force: true });
