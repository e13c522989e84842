/**
 * What a past moment of a large hall costs: the moment, the hour before it, and the marks of the scale, each beside the bare reading of
 * the same rows, built as it ships. What each figure means: README.md.
 *
 * node [--cpu-prof] tests/bench/past-hall.bench.mjs [units]
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
      ssr: join(root, 'tests/bench/past-hall.ts'),
      outDir: join(folder, 'out'),
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'past-hall.mjs' } },
    },
  });
  const { run } = await import(pathToFileURL(join(folder, 'out', 'past-hall.mjs')).href);
  const data = join(folder, 'data');
  mkdirSync(data);
  await run(data, Number(process.argv[2] ?? 200));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
