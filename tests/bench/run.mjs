/** `npm run bench`. Loads the TypeScript of the bench; a child process names its part. */
import { fileURLToPath } from 'node:url';
import { runnerImport } from 'vite';

const [first = 'bench', ...rest] = process.argv.slice(2);
const [part, args] = first === 'quick' ? ['bench', [first]] : [first, rest];
if (!['bench', 'influx', 'publisher', 'bare-subscriber'].includes(part)) {
  process.stderr.write(`no part ${part}; run npm run bench\n`);
  process.exit(1);
}
const { module } = await runnerImport(fileURLToPath(new URL(`./${part}.ts`, import.meta.url)), {
  configFile: false,
  logLevel: 'error',
});
await module.run(args);
