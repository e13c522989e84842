/**
 * CPU time a unit and second of what the evaluator does, built as it ships; a quiet plant, one object of 40 points a
 * unit. CPU time, not wall time; compare ratios, which a busy machine moves less. What each figure means: README.md.
 *
 * node [--cpu-prof] tests/bench/unit-second.bench.mjs [units…]
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build, runnerImport } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-'));
try {
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: join(root, 'tests/bench/unit-second.ts'),
      outDir: folder,
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'unit-second.mjs' } },
    },
  });
  const { run } = await import(pathToFileURL(join(folder, 'unit-second.mjs')).href);
  const { module: bare } = await runnerImport(fileURLToPath(new URL('./bare-cost.ts', import.meta.url)), {
    configFile: false,
    logLevel: 'error',
  });
  run(process.argv.slice(2), await bare.bareCostUs(1000, 10));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
