/** Removes what was built from older sources, and what a killed build left behind. */
import { readdirSync, rmSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';

/** A younger one may belong to a program that is starting just now, ms. */
const OLD_MS = 3_600_000;

/** @param {string[]} inUse folders that stay */
export function removeOldBuilds(data, inUse) {
  const kept = new Set(inUse.map((folder) => basename(folder)));
  for (const name of readdirSync(join(data, 'build'))) {
    const path = join(data, 'build', name);
    const age = Date.now() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? Date.now());
    if (!kept.has(name) && age > OLD_MS) rmSync(path, { recursive: true, force: true });
  }
}
