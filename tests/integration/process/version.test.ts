import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { version } from '../../../backend/package.json';
import { ebblineEnvironment, projectRoot } from '../../helpers/ebbline';
import { stopAfterAll } from '../../helpers/stop-after';
import { temporaryFolder } from '../../helpers/temporary-folder';

const keep = stopAfterAll();

it('tells its version and touches no data folder', async () => {
  const data = join(keep(await temporaryFolder()).path, 'data');
  const start = [join(projectRoot, 'backend/start.mjs'), '--version'];
  const said = execFileSync(process.execPath, start, { encoding: 'utf8', env: ebblineEnvironment({ data }) });
  expect(said).toBe(`${version}\n`);
  expect(existsSync(data)).toBe(false);
});
