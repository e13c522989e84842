/**
 * What is built, and from which sources. `npm start` runs from TypeScript without a build step of its
 * own: each part is built once a version of its sources, below the data folder, so that the project's
 * tree may be read-only.
 */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { projectRoot } from './paths.mjs';

const at = (...names) => join(projectRoot, ...names);
const common = [at('package-lock.json'), at('backend', 'build'), at('shared')];

/** @typedef {{ name: string, kind: 'node' | 'browser', sources: string[], entries: Record<string, string> }} Part */

/** Program of Node, with every package outside the workspaces left where it stands. */
export const backendPart = () => ({
  name: 'backend',
  kind: 'node',
  sources: [...common, at('backend', 'src'), at('backend', 'site-templates')],
  entries: entriesThatExist({
    main: at('backend', 'src', 'main.ts'),
    'history-worker': at('backend', 'src', 'connections', 'history-store', 'history-worker.ts'),
    'site-worker': at('backend', 'src', 'connections', 'site-files', 'site-worker.ts'),
  }),
});

export const simulatorPart = () => ({
  name: 'simulator',
  kind: 'node',
  sources: [...common, at('simulator', 'src')],
  entries: { main: at('simulator', 'src', 'main.ts') },
});

/** One module with what it imports: for small commands such as the check of a site file. */
export const modulePart = (entry) => ({
  name: 'module',
  kind: 'node',
  sources: [...common, at('backend', 'src'), at('backend', 'site-templates'), at('simulator', 'src')],
  entries: { main: entry },
});

export const frontendPart = () => ({
  name: 'frontend',
  kind: 'browser',
  sources: [...common, at('frontend', 'src'), at('frontend', 'index.html'), at('frontend', 'public')],
  entries: {},
});

const entriesThatExist = (entries) =>
  Object.fromEntries(Object.entries(entries).filter(([, path]) => existsSync(path)));
