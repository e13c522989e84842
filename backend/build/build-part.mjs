/**
 * Builds one part with vite and moves it to its place in one step, so that a half-built folder is never
 * taken for a whole one. Runs in a process of its own: what the build holds in memory ends with it.
 */
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { projectRoot } from './paths.mjs';

process.once('message', async ({ part, folder }) => {
  try {
    await buildPart(part, folder);
    process.send({ ok: true }, () => process.disconnect());
  } catch (error) {
    process.send({ ok: false, message: error instanceof Error ? error.message : String(error) }, () =>
      process.disconnect(),
    );
  }
});

async function buildPart(part, folder) {
  const { build } = await import('vite');
  const unfinished = `${folder}.${process.pid}`;
  mkdirSync(unfinished, { recursive: true });
  try {
    await build(part.kind === 'node' ? nodeConfig(part, unfinished) : await browserConfig(unfinished));
    if (part.kind === 'node') linkPackages(unfinished);
    if (!existsSync(folder)) renameSync(unfinished, folder);
  } finally {
    rmSync(unfinished, { recursive: true, force: true });
  }
}

const shared = (folder) => ({
  configFile: false,
  envFile: false,
  cacheDir: join(folder, '.cache'),
  logLevel: 'error',
  clearScreen: false,
});

function nodeConfig(part, folder) {
  return {
    ...shared(folder),
    root: projectRoot,
    publicDir: false,
    oxc: { decorator: { legacy: true } },
    ssr: { noExternal: [/^@ebbline\//, ...packagesOfRooms()] },
    build: {
      ssr: true,
      outDir: folder,
      emptyOutDir: false,
      target: 'node20',
      sourcemap: 'inline',
      rolldownOptions: {
        input: part.entries,
        output: { format: 'es', entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' },
      },
    },
  };
}

/**
 * The library that checks shapes tries out whether it may run generated code as soon as it is loaded, which a strict
 * content policy reports as a violation. Told before, it does not try; nothing later comes early enough.
 */
const checksWithoutEval = 'globalThis.__zod_globalConfig ??= { jitless: true };';

async function browserConfig(folder) {
  const { default: vue } = await import('@vitejs/plugin-vue');
  return {
    ...shared(folder),
    root: join(projectRoot, 'frontend'),
    plugins: [vue()],
    build: {
      outDir: folder,
      emptyOutDir: false,
      target: 'es2022',
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      rolldownOptions: { output: { intro: checksWithoutEval } },
    },
  };
}

/** A room has a package of its own where another version of it stands at the root: what was built finds only those, so it takes it in. */
const packagesOfRooms = () =>
  ['backend', 'simulator'].flatMap((room) => {
    const folder = join(projectRoot, room, 'node_modules');
    const names = existsSync(folder) ? readdirSync(folder).filter((name) => !name.startsWith('.')) : [];
    return names.flatMap((name) =>
      name.startsWith('@') ? readdirSync(join(folder, name)).map((one) => `${name}/${one}`) : [name],
    );
  });

/** What was built looks for its packages beside itself: where the project has them. */
function linkPackages(folder) {
  symlinkSync(join(projectRoot, 'node_modules'), join(folder, 'node_modules'), 'junction');
}
