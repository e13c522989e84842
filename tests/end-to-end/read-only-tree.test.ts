import { execFileSync } from 'node:child_process';
import { chownSync, cpSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { projectRoot, startEbbline } from '../helpers/ebbline';
import { stopAfterAll } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { until } from '../helpers/until';

/** The user that owns nothing, by convention of Linux. */
const nobody = { uid: 65534, gid: 65534 };
const isRoot = process.getuid?.() === 0;
const keep = stopAfterAll();

test('runs on a tree it may not write, as another user than root, with NODE_ENV=production', async () => {
  const data = keep(await temporaryFolder());
  if (isRoot) chownSync(data.path, nobody.uid, nobody.gid);
  const root = isRoot && !readableByNobody() ? await copyOfTheTree() : projectRoot;
  const before = isRoot ? null : topOfTree(root);

  const ebbline = keep(
    await startEbbline({
      data: data.path,
      root,
      env: { NODE_ENV: 'production' },
      cwd: data.path,
      ...(isRoot ? nobody : {}),
    }),
  );
  await until(async () => (await ebbline.health()).status === 'ok', { everyMs: 100, what: 'health ok' });
  expect(await (await fetch(ebbline.url)).text()).toContain('<div id="app">');
  if (before !== null) expect(topOfTree(root)).toEqual(before);
});

function readableByNobody(): boolean {
  try {
    execFileSync(
      process.execPath,
      ['-e', `require('fs').readFileSync(${JSON.stringify(join(projectRoot, 'backend/start.mjs'))})`],
      {
        ...nobody,
        stdio: 'ignore',
      },
    );
    return true;
  } catch {
    return false;
  }
}

/** Owned by root, readable by all. */
async function copyOfTheTree(): Promise<string> {
  const folder = keep(await temporaryFolder());
  const root = join(folder.path, 'ebbline');
  cpSync(projectRoot, root, {
    recursive: true,
    verbatimSymlinks: true,
    filter: (path) => !/\/(\.git|data)$/.test(path),
  });
  return `${root}/`;
}

/** Where a program that writes beside itself would leave its traces. */
const topOfTree = (root: string): string[] =>
  ['.', 'backend', 'frontend', 'simulator', 'shared', 'node_modules'].flatMap((folder) =>
    readdirSync(join(root, folder)).map((name) => join(folder, name)),
  );
