import { chmod, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface TemporaryFolder {
  readonly path: string;
  stop(): Promise<void>;
}

/** A folder of its own for one test, readable by all: a server that drops its privileges must read it. */
export async function temporaryFolder(): Promise<TemporaryFolder> {
  const path = await mkdtemp(join(tmpdir(), 'ebbline-test-'));
  await chmod(path, 0o755);
  return { path, stop: () => rm(path, { recursive: true, force: true, maxRetries: 5 }) };
}
