import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the stories share what was built, so that it is built once a run. */
    readonly buildFolder: string;
  }
}

/** Global set-up of the project: a folder for what the program builds, removed at the end. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'ebbline-build-'));
  project.provide('buildFolder', folder);
  return () => rm(folder, { recursive: true, force: true });
}
