/** Where the project stands, and the one folder that is written to. */
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const projectRoot = fileURLToPath(new URL('../..', import.meta.url));

/** The data folder: EBBLINE_DATA, relative to where the command was given; default `./data`. */
export function dataFolder(environment = process.env) {
  const named = environment.EBBLINE_DATA;
  return named === undefined || named === '' ? resolve('data') : resolve(named);
}
