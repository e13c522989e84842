import { open } from 'node:fs/promises';

/** A file's name is safe against a loss of power only once its folder is. */
export async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
