/** Imports one TypeScript module of the project from plain JavaScript: for small commands. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureBuilt } from './ensure-built.mjs';
import { modulePart } from './parts.mjs';
import { projectRoot } from './paths.mjs';

/** @param {string} path such as `backend/src/connections/site-files/check-site-file.ts` */
export async function loadModule(path) {
  const folder = await ensureBuilt(modulePart(join(projectRoot, path)));
  return import(pathToFileURL(join(folder, 'main.mjs')).href);
}
