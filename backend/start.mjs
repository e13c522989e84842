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
  const { run } = await import('./build/run.mjs');
  await run();
} else {
  complain(fault);
  process.exitCode = 1;
}
