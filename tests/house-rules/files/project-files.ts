import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

export const projectFolder = fileURLToPath(new URL('../../../', import.meta.url));

const notOurs = new Set(['node_modules', '.git', 'dist', 'data', 'coverage', '.vite']);
const textFile =
  /\.(ts|vue|mjs|cjs|js|json|md|yaml|yml|css|svg|html)$|(^|\/)(run|Dockerfile|LICENSE|\.[a-z]+(rc|ignore))$/;

export interface ProjectFile {
  /** From the project root, with forward slashes. */
  readonly path: string;
  readonly text: string;
}

/** Every text file of the project, as it stands in the tree. */
export function projectFiles(): readonly ProjectFile[] {
  return walk(projectFolder)
    .map((path) => relative(projectFolder, path))
    .filter((path) => textFile.test(path) && path !== 'package-lock.json')
    .map((path) => ({ path, text: readFileSync(join(projectFolder, path), 'utf8') }));
}

export const isSource = ({ path }: ProjectFile): boolean => /\.(ts|vue|mjs|cjs)$/.test(path);

/** Lines of a file without the last empty one. */
export const lineCount = ({ text }: ProjectFile): number => text.replace(/\n$/, '').split('\n').length;

function walk(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (notOurs.has(entry.name)) return [];
    const path = join(folder, entry.name);
    return entry.isDirectory() ? walk(path) : [path];
  });
}
