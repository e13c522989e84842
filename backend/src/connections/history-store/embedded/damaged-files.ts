import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { SealedFile } from './manifest';
import { isUnchanged } from './unchanged-files';

/**
 * Sealed files that can't be read, as far as was noticed: missing or of another length, which is looked for at the start and with
 * each maintenance, refused by a read, or found changed when it was compared with its sum. What is damaged is left as it is: it may be put back, or part of it be saved.
 */
export class DamagedFiles {
  readonly #folder: string;
  #byLength: readonly string[] = [];
  readonly #byRead = new Set<string>();
  readonly #bySum = new Set<string>();
  #summed = '';

  constructor(folder: string) {
    this.#folder = folder;
  }

  /** Looks at every file in force; `isReadable` is asked of those that a read refused before. */
  async look(kept: readonly SealedFile[], isReadable: (file: SealedFile) => Promise<boolean>): Promise<void> {
    const wrong: string[] = [];
    const names = new Set(kept.map(({ name }) => name));
    // One by one, since reads may refuse others meanwhile.
    for (const name of this.#byRead) if (!names.has(name)) this.#byRead.delete(name);
    for (const file of kept) {
      if ((await bytesOf(join(this.#folder, file.name))) !== file.bytes) wrong.push(file.name);
      if (this.#byRead.has(file.name) && (await isReadable(file))) this.#byRead.delete(file.name);
    }
    this.#byLength = wrong;
  }

  /** Compares the next files with the sums they were sealed with, round and round, so many bytes a call and one file at least. */
  async compare(kept: readonly SealedFile[], atMostBytes: number): Promise<void> {
    const names = new Set(kept.map(({ name }) => name));
    for (const name of this.#bySum) if (!names.has(name)) this.#bySum.delete(name);
    const inOrder = [...kept].sort((a, b) => (a.name < b.name ? -1 : 1));
    const first = inOrder.findIndex(({ name }) => name > this.#summed);
    let bytes = 0;
    for (const file of inOrder.slice(Math.max(0, first))) {
      if (bytes > 0 && bytes + file.bytes > atMostBytes) break;
      bytes += file.bytes;
      this.#summed = file.name;
      await this.#compareOne(file);
    }
    // One that was put back is to be told from the next call on.
    for (const file of inOrder) if (this.#bySum.has(file.name)) await this.#compareOne(file);
  }

  async #compareOne(file: SealedFile): Promise<void> {
    if (await isUnchanged(this.#folder, file)) this.#bySum.delete(file.name);
    else this.#bySum.add(file.name);
  }

  /** Of some files those that hold something else than was sealed: what they would answer is not what was measured. */
  changed(files: readonly SealedFile[]): readonly string[] {
    return files.map(({ name }) => name).filter((name) => this.#bySum.has(name));
  }

  /** A read could not read these. */
  note(names: readonly string[]): void {
    for (const name of names) this.#byRead.add(name);
  }

  /** What to tell in health; null where no file is known to be damaged. */
  message(): string | null {
    const names = [...new Set([...this.#byLength, ...this.#byRead, ...this.#bySum])].sort();
    if (names.length === 0) return null;
    const shown = names.slice(0, 3).join(', ') + (names.length > 3 ? ` and ${names.length - 3} more` : '');
    return `history file ${shown} is damaged or missing; the periods of all others can be read, and new rows are kept`;
  }
}

const bytesOf = (path: string): Promise<number | null> =>
  stat(path).then(
    ({ size }) => size,
    () => null,
  );
