/** `npm run restore -- FOLDER`: puts a back-up into an empty data folder; exit code 0 restored, 1 journal broken, 2 not restored. */
import { nodeVersionFault } from './build/node-version.mjs';

// Passwords' hashes are among what is written.
process.umask(0o077);
const fault = nodeVersionFault(process.versions.node);
if (fault === null) {
  const { lockDataFolder } = await import('./build/lock-data-folder.mjs');
  const { dataFolder } = await import('./build/paths.mjs');
  const lock = lockDataFolder(dataFolder());
  if (lock.ok) {
    process.exitCode = await restore(dataFolder());
    lock.release();
  } else {
    console.error(`Nothing was restored: ${lock.message}`);
    process.exitCode = 2;
  }
} else {
  console.error(fault);
  process.exitCode = 2;
}

async function restore(folder) {
  const { loadModule } = await import('./build/load-module.mjs');
  const { restoreCommand } = await loadModule('backend/src/main/care/restore-command.ts');
  return restoreCommand({
    args: process.argv.slice(2),
    dataFolder: folder,
    variables: process.env,
    nowMs: Date.now(),
    say: console.log,
    complain: console.error,
  });
}
