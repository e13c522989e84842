import { stat } from 'node:fs/promises';
import { watch, type FSWatcher } from 'node:fs';
import { basename, dirname } from 'node:path';

/** After the last change so long nothing more is written, ms: an editor writes in several steps. */
const QUIET_MS = 200;
/** Where the system tells of no changes (network drives), the file is looked at so often, ms. */
const LOOK_MS = 5000;

/**
 * Tells that the site file, or a YAML file beside it, may have changed: written in place, or replaced by renaming another one
 * over it, as editors do. What has really changed is for the reader to tell, by the content.
 */
export class SiteWatch {
  private watcher: FSWatcher | null = null;
  private quiet: NodeJS.Timeout | null = null;
  private looking: NodeJS.Timeout | null = null;
  private seen = '';

  constructor(
    private readonly file: string,
    private readonly mayHaveChanged: () => void,
  ) {}

  /** Watches from now on; resolves once the file has been looked at. */
  start(): Promise<void> {
    this.open();
    this.looking = setInterval(() => void this.look(), LOOK_MS);
    this.looking.unref();
    return this.look();
  }

  stop(): void {
    this.watcher?.close();
    if (this.quiet !== null) clearTimeout(this.quiet);
    if (this.looking !== null) clearInterval(this.looking);
  }

  /** The folder is watched and not the file: after a rename the old file is watched no more. */
  private open(): void {
    try {
      this.watcher = watch(dirname(this.file), { persistent: false }, (_, name) => this.hear(name));
      this.watcher.on('error', () => {
        this.watcher?.close();
        this.watcher = null;
      });
    } catch {
      this.watcher = null; // looked at every few seconds instead
    }
  }

  private hear(name: string | null): void {
    // A name that begins with `..` is how some platforms change a mounted folder as a whole.
    if (name === null || name === basename(this.file) || name.startsWith('..') || /\.ya?ml$/.test(name)) this.touch();
  }

  private touch(): void {
    if (this.quiet !== null) clearTimeout(this.quiet);
    this.quiet = setTimeout(() => {
      this.quiet = null;
      this.mayHaveChanged();
    }, QUIET_MS);
    this.quiet.unref();
  }

  private async look(): Promise<void> {
    const found = await stat(this.file).catch(() => null);
    const now = found === null ? 'gone' : `${found.ino} ${found.size} ${found.mtimeMs}`;
    if (this.seen !== '' && now !== this.seen) this.touch();
    this.seen = now;
    if (this.watcher === null) this.open();
  }
}
