/** One short hash of all the files below some paths: the name of what was built from them. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { projectRoot } from './paths.mjs';

export function sourceHash(paths, extra = '') {
  const hash = createHash('sha256').update(extra);
  for (const file of paths.flatMap(filesBelow)) {
    hash.update(`\0${relative(projectRoot, file)}\0`).update(readFileSync(file));
  }
  return hash.digest('hex').slice(0, 16);
}

/** Files in the order of their names; a path that is not there has none. */
function filesBelow(path) {
  const found = statSync(path, { throwIfNoEntry: false });
  if (found === undefined) return [];
  if (!found.isDirectory()) return [path];
  return readdirSync(path)
    .filter((name) => name !== 'node_modules')
    .sort()
    .flatMap((name) => filesBelow(join(path, name)));
}
