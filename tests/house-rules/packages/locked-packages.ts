import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from '../files/project-files';

export interface LockedPackage {
  /** Below the project, such as `node_modules/zod`. */
  readonly path: string;
  readonly name: string;
  readonly version: string;
  /** SPDX expression; null where none is stated. */
  readonly licence: string | null;
  /** Versions of Node that it asks for; null where it asks for none. */
  readonly node: string | null;
  /** Installed for work on Ebbline only: `npm ci --omit=dev` leaves it out. */
  readonly dev: boolean;
}

interface Entry {
  readonly version?: string;
  readonly license?: string;
  readonly engines?: { readonly node?: string };
  readonly dev?: boolean;
  readonly link?: boolean;
}

/** Every package that the lock file names, our own rooms left out. */
export function lockedPackages(): readonly LockedPackage[] {
  const text = readFileSync(join(projectFolder, 'package-lock.json'), 'utf8');
  const { packages } = JSON.parse(text) as { packages: Readonly<Record<string, Entry>> };
  return Object.entries(packages)
    .filter(([path, { link }]) => path.includes('node_modules/') && link !== true)
    .map(([path, entry]) => ({
      path,
      name: path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length),
      version: entry.version ?? '',
      licence: entry.license ?? olderLicence(path),
      node: entry.engines?.node ?? null,
      dev: entry.dev === true,
    }));
}

/** Packages of before 2014 state a list of `licenses`, which the lock file does not take over. */
function olderLicence(path: string): string | null {
  const file = join(projectFolder, path, 'package.json');
  if (!existsSync(file)) return null;
  const { licenses } = JSON.parse(readFileSync(file, 'utf8')) as { licenses?: readonly { readonly type: string }[] };
  return licenses?.map(({ type }) => type).join(' OR ') ?? null;
}
