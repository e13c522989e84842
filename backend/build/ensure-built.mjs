/** The folder of a part, built now if it was not yet built from these sources. */
import { fork } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { dataFolder } from './paths.mjs';
import { sourceHash } from './source-hash.mjs';

const builder = fileURLToPath(new URL('build-part.mjs', import.meta.url));

/**
 * @param {import('./parts.mjs').Part} part
 * @returns {Promise<string>} the folder with what was built
 */
export async function ensureBuilt(part, data = dataFolder()) {
  const hash = sourceHash(part.sources, JSON.stringify([part.entries, process.versions.modules]));
  const folder = join(data, 'build', `${part.name}-${hash}`);
  if (existsSync(folder)) return folder;
  mkdirSync(join(data, 'build'), { recursive: true });
  await buildInAnotherProcess(part, folder);
  return folder;
}

function buildInAnotherProcess(part, folder) {
  return new Promise((resolve, reject) => {
    const child = fork(builder, [], { execArgv: [], stdio: ['ignore', 'inherit', 'inherit', 'ipc'] });
    let answer = { ok: false, message: 'the build ended without a word' };
    child.on('message', (message) => {
      answer = message;
    });
    child.once('error', reject);
    child.once('exit', () =>
      answer.ok ? resolve() : reject(new Error(`The ${part.name} could not be built: ${answer.message}`)),
    );
    child.send({ part, folder });
  });
}
