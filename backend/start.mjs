/**
 * `npm start`: builds what is not built yet, runs the backend in this process, and the simulator beside it
 * where it is wanted. The last line is the address, printed when all is ready. `--version` prints the version alone.
 */
import { readFileSync } from 'node:fs';
import { nodeVersionFault } from './build/node-version.mjs';
import { complain } from './build/voice.mjs';

const fault = nodeVersionFault(process.versions.node);
if (process.argv.includes('--version')) {
  console.log(JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8')).version);
} else if (fault === null) {
  const { run } = await import('./build/run.mjs').catch(saidMissing);
  await run?.();
} else {
  complain(fault);
  process.exitCode = 1;
}

/** Packages that are not there, or not all: what to do stands before Node's own words. */
function saidMissing(error) {
  if (error?.code !== 'ERR_MODULE_NOT_FOUND' || !/Cannot find package/.test(error.message)) throw error;
  complain(
    `Not everything that Ebbline needs is installed: ${error.message.split('\n')[0]}. Run npm ci, then npm start again.`,
  );
  process.exitCode = 1;
  return {};
}
