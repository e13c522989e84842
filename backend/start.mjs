/**
 * `npm start`: builds what is not built yet, runs the backend in this process, and the simulator beside it
 * where it is wanted. The last line is the address, printed when all is ready.
 */
import { nodeVersionFault } from './build/node-version.mjs';

const fault = nodeVersionFault(process.versions.node);
if (fault === null) {
  const { run } = await import('./build/run.mjs');
  await run();
} else {
  console.error(fault);
  process.exitCode = 1;
}
