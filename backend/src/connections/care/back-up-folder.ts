import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readdir, readFile, realpath, rename, rm, rmdir, writeFile } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import { backUpFormat, backUpManifestSchema, type BackUpManifest } from '@ebbline/shared/contract/back-up-manifest';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { digestFile } from './digest-file';
import { filesBelow, finishPrivately, makePrivateFolder, synchronize, synchronizeFolders } from './private-files';

/** Name of the manifest within a back-up. */
export const manifestFile = 'back-up.json';

/** Whether a back-up may be written there: nothing there yet, and outside of what is backed up. Null, or why not. */
export async function refusedTarget(target: string, dataFolder: string): Promise<string | null> {
  // By its name as well as by where its links lead: a folder is written beside it, too.
  if (isWithin(resolve(target), resolve(dataFolder)) || isWithin(await placeOf(target), await placeOf(dataFolder)))
    return `${target} lies in the data folder; name a folder outside of it, best on another disk`;
  if (!existsSync(target)) return null;
  const names = await readdir(target).catch(() => null);
  if (names === null) return `${target} is there and no folder that can be read; name another one`;
  return names.length === 0 ? null : `${target} is not empty, and nothing is written over; name a new folder`;
}

function isWithin(path: string, folder: string): boolean {
  const way = relative(folder, path);
  return !(way === '..' || way.startsWith(`..${sep}`) || isAbsolute(way));
}

/** Where a path leads, through every link of it that is there; what is not there yet keeps its name. */
async function placeOf(path: string): Promise<string> {
  const whole = resolve(path);
  const above = dirname(whole);
  return realpath(whole).catch(async () => (above === whole ? whole : join(await placeOf(above), basename(whole))));
}

/** A folder beside the target in which a back-up is written before it is whole. */
export async function beginFolder(target: string): Promise<string> {
  const writing = `${resolve(target)}.writing-${randomBytes(4).toString('hex')}`;
  await makePrivateFolder(writing);
  return writing;
}

/** Sums up every file, writes the manifest as the last one, and gives the folder its name. */
export async function finishFolder(
  writing: string,
  target: string,
  about: Omit<BackUpManifest, 'format' | 'files'>,
): Promise<BackUpManifest> {
  const files: BackUpManifest['files'] = [];
  for (const name of await filesBelow(writing)) {
    await finishPrivately(join(writing, name));
    files.push({ name, ...(await digestFile(join(writing, name))) });
  }
  const manifest: BackUpManifest = { format: backUpFormat, ...about, files };
  await writeFile(join(writing, manifestFile), `${JSON.stringify(manifest, null, 2)}\n`, { mode: 0o600 });
  await finishPrivately(join(writing, manifestFile));
  await synchronizeFolders(writing);
  if (existsSync(target)) await rmdir(target);
  await rename(writing, target);
  await synchronize(dirname(resolve(target)));
  return manifest;
}

export const dropFolder = (writing: string): Promise<void> => rm(writing, { recursive: true, force: true });

/** The manifest of a back-up; the fault says why the folder is none. */
export async function readManifest(folder: string): Promise<Result<BackUpManifest, string>> {
  const text = await readFile(join(folder, manifestFile), 'utf8').catch(() => null);
  if (text === null)
    return fail(
      `${folder} holds no ${manifestFile}: it is no back-up, or one that was never finished; name another one`,
    );
  const found = parsed(text);
  if (isNewer(found))
    return fail(`${folder} was written by a newer program; restore it with that one, or a newer one still`);
  const read = backUpManifestSchema.safeParse(found);
  return read.success ? ok(read.data) : fail(`${join(folder, manifestFile)} is damaged; take another back-up`);
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
}

const isNewer = (found: unknown): boolean =>
  typeof found === 'object' &&
  found !== null &&
  'format' in found &&
  typeof found.format === 'number' &&
  found.format > backUpFormat;
