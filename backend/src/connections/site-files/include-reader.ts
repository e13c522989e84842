import { readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { shippedTemplates } from './shipped-templates';

export interface IncludedText {
  /** As messages name it. */
  readonly file: string;
  readonly text: string;
}

/** The text behind a name under `include`, or why there is none. */
export type IncludeReader = (name: string) => Result<IncludedText, string>;

const largestBytes = 4_000_000;
/** One file name: no folder, no way up, nothing hidden. */
const plainFileName = /^[A-Za-z0-9][A-Za-z0-9._-]{0,99}\.ya?ml$/;

const known = [...shippedTemplates.keys()].join(', ');

/** Takes in what comes with the program only: for a text that has no place on a disk. */
export const shippedOnly: IncludeReader = (name) => {
  const text = shippedTemplates.get(name);
  return text === undefined
    ? fail(`there is nothing of this name here; known are ${known}`)
    : ok({ file: `${name}.yaml (comes with Ebbline)`, text });
};

/** Takes in what comes with the program, and files in the folder of the site file; nothing from anywhere else. */
export function beside(siteFile: string): IncludeReader {
  return (name) => {
    if (shippedTemplates.has(name)) return shippedOnly(name);
    if (!plainFileName.test(name))
      return fail(`expected ${known}, or the name of a file beside this one, such as racks.yaml, without any folder`);
    const file = join(dirname(siteFile), name);
    try {
      if (statSync(file).size > largestBytes) return fail(`the file is larger than ${largestBytes} bytes; divide it`);
      return ok({ file: name, text: readFileSync(file, 'utf8') });
    } catch (cause) {
      const code = cause instanceof Error && 'code' in cause ? String(cause.code) : 'unreadable';
      return fail(`the file cannot be read (${code}); put it beside the site file and check who may read it`);
    }
  };
}
