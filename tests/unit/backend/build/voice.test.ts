import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, openSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterEach, describe, expect, it } from 'vitest';
import { projectRoot } from '../../../helpers/ebbline';

/** Says one line by each way at every message, and answers with the faults of both streams so far; it listens to none of them. */
const speaker = `
import { errorMonitor } from 'node:events';
import { complain, print, say } from ${JSON.stringify(pathToFileURL(join(projectRoot, 'backend/build/voice.mjs')).href)};
const faults = [];
process.stdout.on(errorMonitor, ({ code }) => faults.push('out ' + code));
process.stderr.on(errorMonitor, ({ code }) => faults.push('err ' + code));
process.on('message', () => {
  say('said');
  complain('complained');
  print('printed', 'info');
  setImmediate(() => setImmediate(() => process.send(faults)));
});
process.send([]);
`;

let child: ChildProcess | undefined;
afterEach(() => void child?.kill('SIGKILL'));

async function started(out: 'pipe' | number): Promise<ChildProcess> {
  const stdio = ['ignore', out, 'pipe', 'ipc'] as const;
  child = spawn(process.execPath, ['--input-type=module', '-e', speaker], { stdio: [...stdio] });
  await once(child, 'message');
  return child;
}

/** The faults of its streams so far; fails where it has ended. */
async function spoken(speaking: ChildProcess): Promise<string[]> {
  const ended = once(speaking, 'exit').then(([code]) => Promise.reject(new Error(`it ended with ${String(code)}`)));
  const answered = once(speaking, 'message');
  speaking.send('speak');
  const [faults] = await Promise.race([answered, ended]);
  return faults as string[];
}

describe('what is told while the program runs', () => {
  it('ends nothing where its reader has ended, however often it is told', async () => {
    const speaking = await started('pipe');
    for (const stream of [speaking.stdout, speaking.stderr]) {
      if (stream === null) throw new Error('no pipe');
      stream.destroy();
      await once(stream, 'close');
    }
    await spoken(speaking);
    await spoken(speaking);
    const faults = await spoken(speaking);
    expect(new Set(faults)).toEqual(new Set(['out EPIPE', 'err EPIPE']));
    expect(faults.length).toBeGreaterThan(2);
  });

  it('is told of once on the other stream, where a stream fails by any other cause', async () => {
    const readOnly = openSync(join(projectRoot, 'package.json'), 'r');
    const speaking = await started(readOnly);
    closeSync(readOnly);
    let told = '';
    speaking.stderr?.on('data', (part: Buffer) => (told += part.toString()));
    await spoken(speaking);
    expect(new Set(await spoken(speaking))).toEqual(new Set(['out EBADF']));
    const closed = once(speaking, 'close');
    speaking.kill('SIGKILL');
    await closed;
    expect(told.split('\n').filter((line) => line === 'complained')).toHaveLength(2);
    expect(told.split('\n').filter((line) => line.includes('standard output'))).toEqual([
      'The standard output takes no lines (EBADF); what is told there is lost, and the program runs on.',
    ]);
  });
});
