/**
 * What a limit trial costs over history of one unit at a second: on stored points beside the bare read of the same columns, and worked
 * out anew. Built as it ships; compare ratios. What each figure means: README.md.
 *
 * node tests/bench/limit-trial.bench.mjs [days of history]
 */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-'));
try {
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: [/^@ebbline\//] },
    build: {
      ssr: join(root, 'tests/bench/limit-trial.ts'),
      outDir: join(folder, 'out'),
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'limit-trial.mjs' } },
    },
  });
  const { run } = await import(pathToFileURL(join(folder, 'out', 'limit-trial.mjs')).href);
  const data = join(folder, 'data');
  mkdirSync(data);
  await run(data, Number(process.argv[2] ?? 30));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
