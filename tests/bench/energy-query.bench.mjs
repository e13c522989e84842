/**
 * What `GET /api/energy` costs: days read from history, days added up and kept, and kept days told again, built as it ships. CPU time
 * of this process; compare ratios. What each figure means: README.md.
 *
 * node tests/bench/energy-query.bench.mjs [days of history]
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
      ssr: join(root, 'tests/bench/energy-query.ts'),
      outDir: join(folder, 'out'),
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'energy-query.mjs' } },
    },
  });
  const { run } = await import(pathToFileURL(join(folder, 'out', 'energy-query.mjs')).href);
  const data = join(folder, 'data');
  mkdirSync(data);
  await run(data, Number(process.argv[2] ?? 5));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
