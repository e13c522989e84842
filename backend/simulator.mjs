/**
 * `npm run simulator`: the plants of the demo site alone, on the broker of EBBLINE_MQTT_URL, for a backend that runs
 * with EBBLINE_SIMULATOR=off. Built below the data folder if it is not yet; Ctrl-C ends it.
 */
import { nodeVersionFault } from './build/node-version.mjs';

const fault = nodeVersionFault(process.versions.node);
if (fault === null) {
  const { loadModule } = await import('./build/load-module.mjs');
  await loadModule('simulator/src/main.ts');
} else {
  console.error(fault);
  process.exitCode = 1;
}
