/** `npm run people:new-link -- NAME`: a one-time link for someone whose password is lost; exit code 0 made, 1 refused, 2 nothing to make it of. */
import { nodeVersionFault } from './build/node-version.mjs';

process.umask(0o077);
const fault = nodeVersionFault(process.versions.node);
if (fault === null) {
  const { lockDataFolder } = await import('./build/lock-data-folder.mjs');
  const { dataFolder } = await import('./build/paths.mjs');
  const lock = lockDataFolder(dataFolder());
  if (lock.ok) {
    process.exitCode = await newLink(dataFolder());
    lock.release();
  } else {
    console.error(`No link was made: ${lock.message} While it runs, an admin can make the link on the page of people.`);
    process.exitCode = 1;
  }
} else {
  console.error(fault);
  process.exitCode = 2;
}

async function newLink(folder) {
  const { loadModule } = await import('./build/load-module.mjs');
  const { newLinkCommand } = await loadModule('backend/src/main/care/new-link-command.ts');
  return newLinkCommand({
    args: process.argv.slice(2),
    dataFolder: folder,
    say: console.log,
    complain: console.error,
  });
}
