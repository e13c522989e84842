/** `npm run backup -- FOLDER`: copies the data folder, of a running program too; exit code 0 whole, 1 journal broken, 2 not written. */
import { nodeVersionFault } from './build/node-version.mjs';

// Passwords' hashes are among what is written.
process.umask(0o077);
const fault = nodeVersionFault(process.versions.node);
if (fault === null) {
  const { loadModule } = await import('./build/load-module.mjs');
  const { dataFolder } = await import('./build/paths.mjs');
  const { backUpCommand } = await loadModule('backend/src/main/care/back-up-command.ts');
  process.exitCode = await backUpCommand({
    args: process.argv.slice(2),
    dataFolder: dataFolder(),
    variables: process.env,
    nowMs: Date.now(),
    say: console.log,
    complain: console.error,
  });
} else {
  console.error(fault);
  process.exitCode = 2;
}
