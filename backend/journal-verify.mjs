/** `npm run journal:verify [-- FILE]`: walks the journal's chain of hashes; exit code 0 whole, 1 broken, 2 not checked. */
import { join } from 'node:path';
import { nodeVersionFault } from './build/node-version.mjs';

const fault = nodeVersionFault(process.versions.node);
if (fault === null) {
  const { loadModule } = await import('./build/load-module.mjs');
  const { dataFolder } = await import('./build/paths.mjs');
  const { verifyJournalCommand } = await loadModule('backend/src/connections/alarm-journal/verify-journal-command.ts');
  const journal = join(dataFolder(), 'journal.sqlite');
  process.exitCode = verifyJournalCommand(process.argv.slice(2), journal, console.log, console.error);
} else {
  console.error(fault);
  process.exitCode = 2;
}
