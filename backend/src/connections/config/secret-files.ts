import { fstatSync, openSync, readSync, closeSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Fault } from './read-variable';

/** Variables that may hold a secret, and so may also be given as a file, by the same name with `_FILE`. */
export const secretVariables: readonly string[] = [
  'EBBLINE_MQTT_URL',
  'EBBLINE_INFLUX_URL',
  'EBBLINE_OIDC_CLIENT_SECRET',
];

/** Far above any secret, far below what would hurt to read by mistake. */
const LONGEST_BYTES = 65_536;

type Variables = Readonly<Record<string, string | undefined>>;

export interface WithSecrets {
  /** As given, with the content of each file in the place of its variable. */
  readonly variables: Variables;
  readonly faults: readonly Fault[];
}

/** Reads each secret that is given as a file. One that is given both ways is refused: which of them is old? */
export function readSecretFiles(variables: Variables, workingFolder: string): WithSecrets {
  const read: Record<string, string | undefined> = { ...variables };
  const faults: Fault[] = [];
  for (const name of secretVariables) {
    const fileName = `${name}_FILE`;
    const file = variables[fileName];
    if (file === undefined || file === '') continue;
    if ((variables[name] ?? '') !== '') {
      faults.push({ variable: fileName, message: `and ${name} are both set: keep one of them` });
      continue;
    }
    const text = textOf(resolve(workingFolder, file));
    if (typeof text === 'string') read[name] = text;
    else faults.push({ variable: fileName, message: text.fault });
  }
  return { variables: read, faults };
}

/** One line, its end not counted. */
function textOf(path: string): string | { readonly fault: string } {
  try {
    const file = openSync(path, 'r');
    try {
      if (!fstatSync(file).isFile()) return { fault: 'names something that is no file' };
      const bytes = Buffer.alloc(LONGEST_BYTES + 1);
      const length = readSync(file, bytes, 0, bytes.length, 0);
      const text = bytes.toString('utf8', 0, length).replace(/\r?\n$/, '');
      if (text === '') return { fault: 'names a file that is empty' };
      return length > LONGEST_BYTES || /[\r\n]/.test(text) ? { fault: 'names a file of more than one line' } : text;
    } finally {
      closeSync(file);
    }
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unreadable';
    return { fault: `names a file that cannot be read (${code}); check its name and who may read it` };
  }
}
