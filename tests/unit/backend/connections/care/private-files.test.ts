import { mkdir, type open, stat, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { beforeEach, describe, expect, it, vi } from 'vitest';
import { beginFolder, finishFolder } from '../../../../../backend/src/connections/care/back-up-folder';
import { copyPrivately, makePrivateFolder } from '../../../../../backend/src/connections/care/private-files';
import { enforceStaged } from '../../../../../backend/src/connections/care/restore-folder';
import { stopAfterEach } from '../../../../helpers/stop-after';
import { temporaryFolder } from '../../../../helpers/temporary-folder';

/** Whatever was brought to the disk, in that order. */
const synced: string[] = [];
vi.mock(import('node:fs/promises'), async (original) => {
  const real = await original();
  const noting = async (...[path, ...more]: Parameters<typeof open>) => {
    const handle = await real.open(path, ...more);
    const sync = handle.sync.bind(handle);
    handle.sync = () => (synced.push(String(path)), sync());
    return handle;
  };
  return { ...real, open: noting };
});

const keep = stopAfterEach();
let root: string;
beforeEach(async () => {
  root = keep(await temporaryFolder()).path;
  synced.length = 0;
});
const names = (): string[] => synced.map((path) => relative(root, path) || '.');

describe('folders of a back-up', () => {
  it('have their names on the disk once they are made, each of them, and those that are there are left alone', async () => {
    await makePrivateFolder(join(root, 'a/b/c'));
    expect(names().sort()).toEqual(['.', 'a', 'a/b']);
    expect((await stat(join(root, 'a'))).mode & 0o777).toBe(0o700);
    synced.length = 0;
    await makePrivateFolder(join(root, 'a/b/c'));
    await copyPrivately(import.meta.filename, join(root, 'a/d/file'));
    expect(names()).toEqual(['a', 'a/d/file']);
  });

  it('are on the disk with all that stands in them before a back-up gets its name', async () => {
    const writing = await beginFolder(join(root, 'made'));
    await mkdir(join(writing, 'history/seconds'), { recursive: true });
    await writeFile(join(writing, 'history/seconds/hour'), 'rows');
    synced.length = 0;
    const journal = { rows: 0, sequence: 0, hash: '0'.repeat(64), brokenAt: null };
    await finishFolder(writing, join(root, 'made'), { program: '1.0.0', writtenAt: 'now', schemas: {}, journal });
    const within = synced.map((path) => relative(writing, path) || '.');
    for (const folder of ['history/seconds', 'history', '.']) expect(within).toContain(folder);
    expect(names().at(-1)).toBe('.');
  });

  it('are on the disk with all that stands in them before a restore moves them to their place', async () => {
    const staged = join(root, 'staged');
    await mkdir(join(staged, 'history/seconds'), { recursive: true });
    await writeFile(join(staged, 'journal'), '');
    await enforceStaged(staged, root, 'journal');
    expect(names()).toEqual(['staged/history/seconds', 'staged/history', 'staged', '.', '.']);
  });
});
