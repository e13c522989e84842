import { symlink } from 'node:fs/promises';
import { join } from 'node:path';
import { inject } from 'vitest';
import { type TemporaryFolder, temporaryFolder } from '../helpers/temporary-folder';

/** A fresh data folder that takes what other stories have built already. */
export async function dataFolder(): Promise<TemporaryFolder> {
  const folder = await temporaryFolder();
  await symlink(inject('buildFolder'), join(folder.path, 'build'));
  return folder;
}
