import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { promisify } from 'node:util';
import type { Health } from '@ebbline/shared/contract/http-api';
import { expect, test } from 'vitest';
import { addressIn, ebblineEnvironment, projectRoot } from '../helpers/ebbline';
import { pathOf, suiteNeeding } from '../helpers/requirements';
import { startProcess } from '../helpers/server-process';
import { stopAfterAll } from '../helpers/stop-after';
import { temporaryFolder } from '../helpers/temporary-folder';
import { until } from '../helpers/until';

const run = promisify(execFile);
const loopbackOnly = 'ip link set lo up && exec "$@"';

suiteNeeding(['unshare'], 'a machine without a network', () => {
  const keep = stopAfterAll();

  test('builds and runs the demo hall, which reaches health ok', async () => {
    // A data folder of its own, in which nothing is built yet: the build needs no network either.
    const data = keep(await temporaryFolder());
    const start = [process.execPath, join(projectRoot, 'backend/start.mjs')];
    const program = keep(
      startProcess(pathOf('unshare'), ['-rn', 'sh', '-c', loopbackOnly, 'sh', ...start], {
        env: ebblineEnvironment({ data: data.path }),
      }),
    );
    const url = await Promise.race([
      until(() => addressIn(program.output()), { withinMs: 150_000, everyMs: 50, what: 'the address' }),
      program.ended,
    ]);
    /** Asks from inside: from outside there is no way in. `unshare` and `sh` have become the program itself. */
    const inside = async (script: string): Promise<string> => {
      const enter = ['-t', String(program.pid), '-U', '-n', '--preserve-credentials', process.execPath, '-e', script];
      return (await run('nsenter', enter)).stdout;
    };
    const ask = (path: string): Promise<string> =>
      inside(`fetch('${url}${path}').then((reply) => reply.text()).then((text) => process.stdout.write(text))`);
    const health = await until(
      async () => {
        const now = JSON.parse(await ask('/api/health')) as Health;
        return now.status === 'ok' ? now : null;
      },
      { withinMs: 120_000, everyMs: 250, what: 'health ok' },
    );
    expect(health.broker).toMatchObject({ state: 'connected', embedded: true });
    expect(await ask('/')).toContain('<div id="app">');
    // No way out, or this test would prove nothing.
    const interfaces = "process.stdout.write(Object.keys(require('node:os').networkInterfaces()).join())";
    expect(await inside(interfaces)).toBe('lo');
  });
});
