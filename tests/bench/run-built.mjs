import { mkdirSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Builds a part of the bench as the program ships, in a folder of its own, runs it with an empty data folder, and removes both.
 * @param {string} part name of its TypeScript beside this file
 * @param {number} size what its `run` is given beside the folder
 */
export async function runBuilt(part, size) {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-'));
  try {
    symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
    await build({
      root,
      configFile: false,
      logLevel: 'error',
      ssr: { noExternal: [/^@ebbline\//] },
      build: {
        ssr: join(root, `tests/bench/${part}.ts`),
        outDir: join(folder, 'out'),
        minify: false,
        rolldownOptions: { output: { entryFileNames: `${part}.mjs` } },
      },
    });
    const { run } = await import(pathToFileURL(join(folder, 'out', `${part}.mjs`)).href);
    const data = join(folder, 'data');
    mkdirSync(data);
    await run(data, size);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
