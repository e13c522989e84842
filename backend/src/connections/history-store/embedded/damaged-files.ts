import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { SealedFile } from './manifest';

/**
 * Sealed files that can't be read, as far as was noticed: missing or of another length, which is looked for at the start and with
 * each maintenance, or refused by a read. What is damaged is left as it is: it may be put back, or part of it be saved.
 */
export class DamagedFiles {
  readonly #folder: string;
  #byLength: readonly string[] = [];
  #byRead = new Set<string>();

  constructor(folder: string) {
    this.#folder = folder;
  }

  /** Looks at every file in force; `isReadable` is asked of those that a read refused before. */
  async look(kept: readonly SealedFile[], isReadable: (file: SealedFile) => Promise<boolean>): Promise<void> {
    const wrong: string[] = [];
    const refused = new Set<string>();
    for (const file of kept) {
      if ((await bytesOf(join(this.#folder, file.name))) !== file.bytes) wrong.push(file.name);
      if (this.#byRead.has(file.name) && !(await isReadable(file))) refused.add(file.name);
    }
    this.#byLength = wrong;
    this.#byRead = refused;
  }

  /** A read could not read these. */
  note(names: readonly string[]): void {
    for (const name of names) this.#byRead.add(name);
  }

  /** What to tell in health; null where no file is known to be damaged. */
  message(): string | null {
    const names = [...new Set([...this.#byLength, ...this.#byRead])].sort();
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
