import { existsSync, readFileSync } from 'node:fs';
import { open, rename } from 'node:fs/promises';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { failpoint } from '../../ports/failpoint';
import type { MemoryStore } from '../../ports/memory-store';
import { learntBytes, learntOf } from './learnt-bytes';

type Learnt = Parameters<MemoryStore['save']>[0];

/** Name of the file within the data folder. */
export const memoryFileName = 'learnt.bin';

/** What the judge has learnt, in one file beside the journal. It is written under another name first, so that it is never half there. */
export class MemoryFile implements MemoryStore {
  constructor(private readonly path: string) {}

  /** @throws CodedError MEMORY_MALFORMED where the file is no such file */
  load(): Learnt | null {
    if (!existsSync(this.path)) return null;
    const learnt = learntOf(readFileSync(this.path));
    if (learnt !== null) return learnt;
    throw new CodedError('MEMORY_MALFORMED', `${this.path} is cut off or no file of ours; it is written anew`);
  }

  async save(learnt: Learnt): Promise<void> {
    const writing = `${this.path}.writing`;
    const handle = await open(writing, 'w');
    try {
      await handle.writeFile(learntBytes(learnt));
      failpoint('memory-mid-write');
      await handle.sync();
    } finally {
      await handle.close();
    }
    failpoint('memory-before-rename');
    await rename(writing, this.path);
    failpoint('memory-after-rename');
  }
}
