/** `npm run bench`. Loads the TypeScript of the bench; a child process names its part. */
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const part = process.argv[2] ?? 'bench';
if (!['bench', 'publisher', 'bare-subscriber'].includes(part)) {
  process.stderr.write(`no part ${part}; run npm run bench\n`);
  process.exit(1);
}
const { module } = await runnerImport(fileURLToPath(new URL(`./${part}.ts`, import.meta.url)), {
  configFile: false,
  logLevel: 'error',
});
await module.run(process.argv.slice(3));
