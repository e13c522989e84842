import { symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { stopAfterAll } from '../../helpers/stop-after';
import { type TemporaryFolder, temporaryFolder } from '../../helpers/temporary-folder';

const keep = stopAfterAll();
let built: Promise<TemporaryFolder> | null = null;

/** A fresh data folder that shares with the others of this file what the program builds. */
export async function builtDataFolder(): Promise<TemporaryFolder> {
  built ??= temporaryFolder().then(keep);
  const folder = await temporaryFolder();
  await symlink((await built).path, join(folder.path, 'build'));
  return folder;
}
