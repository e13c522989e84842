import { mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Source built into one file that a plain `node` can run, in a folder of its own; packages are found by a link. */
export interface Bundle {
  readonly file: string;
  readonly folder: string;
  remove(): void;
}

export async function bundle(entryUrl: URL): Promise<Bundle> {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-bundle-'));
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  await build({
    root,
    configFile: false,
    logLevel: 'silent',
    build: {
      ssr: fileURLToPath(entryUrl),
      outDir: join(folder, 'out'),
      rolldownOptions: { output: { entryFileNames: 'entry.mjs' } },
    },
    ssr: { noExternal: [/^@ebbline\//] },
  });
  return {
    file: join(folder, 'out', 'entry.mjs'),
    folder,
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}
