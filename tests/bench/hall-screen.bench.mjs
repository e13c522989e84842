/**
 * What a hall of many units costs the main thread of a browser: CPU time, not wall time; compare the ratio. What each figure means:
 * README.md. Needs Chromium and mosquitto.
 *
 * node tests/bench/hall-screen.bench.mjs [units] [seconds]
 */
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const { module } = await runnerImport(fileURLToPath(new URL('./hall-screen.ts', import.meta.url)), {
  configFile: false,
  logLevel: 'error',
});
await module.run(process.argv.slice(2).map(Number));
