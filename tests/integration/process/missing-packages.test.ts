import { spawnSync } from 'node:child_process';
import { cpSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ebblineEnvironment, projectRoot } from '../../helpers/ebbline';
import { stopAfterAll } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';

const keep = stopAfterAll();

it('says what to run where packages are missing, and nothing of Node’s own', async () => {
  const { path } = keep(await temporaryFolder());
  for (const part of ['start.mjs', 'build', 'package.json'])
    cpSync(join(projectRoot, 'backend', part), join(path, part), { recursive: true });
  const env = ebblineEnvironment({ data: join(path, 'data') });
  const { status, stderr } = spawnSync(process.execPath, [join(path, 'start.mjs')], { encoding: 'utf8', env });
  expect(status).toBe(1);
  expect(stderr).toMatch(/^Not everything that Ebbline needs is installed: Cannot find package '[^']+'.*Run npm ci/);
  expect(stderr.trimEnd().split('\n')).toHaveLength(1);
});
