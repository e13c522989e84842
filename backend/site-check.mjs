/** `npm run site:check -- FILE`: checks a site file; exit code 0 when it is fit to run, 1 when not. */
import { nodeVersionFault } from './build/node-version.mjs';

const fault = nodeVersionFault(process.versions.node);
if (fault === null) {
  const { loadModule } = await import('./build/load-module.mjs');
  const { checkSiteFileCommand } = await loadModule('backend/src/connections/site-files/check-site-file.ts');
  process.exitCode = await checkSiteFileCommand(process.argv.slice(2), console.log, console.error);
} else {
  console.error(fault);
  process.exitCode = 1;
}
