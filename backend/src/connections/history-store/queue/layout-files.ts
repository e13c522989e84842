import { open, readFile, rename, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { readLayout, type QueuedLayout } from './queued-layout';
import { syncFolder } from './sync-folder';

const nameOf = (id: string): string => `layout-${id}.json`;

/** The layouts that blocks in the folder refer to. */
export class LayoutFiles {
  private readonly known = new Map<string, QueuedLayout>();
  private readonly written = new Set<string>();

  constructor(private readonly folder: string) {}

  /** Resolves once the layout is on the disk, under its name only when it is whole: others may be reading it. */
  async keep(layout: QueuedLayout): Promise<void> {
    if (this.written.has(layout.id)) return;
    if ((await this.find(layout.id)) === null) await this.write(layout);
    this.written.add(layout.id);
    this.known.set(layout.id, layout);
  }

  /** Null where it is not there or damaged: then its blocks can't be read. */
  async find(id: string): Promise<QueuedLayout | null> {
    const known = this.known.get(id);
    if (known !== undefined) return known;
    const text = await readFile(join(this.folder, nameOf(id)), 'utf8').catch(() => '');
    const layout = readLayout(id, text);
    if (layout !== null) this.known.set(id, layout);
    return layout;
  }

  /** When no block is left. */
  async clear(): Promise<void> {
    const ids = [...new Set([...this.known.keys(), ...this.written])];
    this.known.clear();
    this.written.clear();
    for (const id of ids) await rm(join(this.folder, nameOf(id)), { force: true });
  }

  private async write({ id, text }: QueuedLayout): Promise<void> {
    const path = join(this.folder, nameOf(id));
    const file = await open(`${path}.writing`, 'w', 0o600);
    try {
      await file.writeFile(text);
      await file.datasync();
    } finally {
      await file.close();
    }
    await rename(`${path}.writing`, path);
    await syncFolder(this.folder);
  }
}
