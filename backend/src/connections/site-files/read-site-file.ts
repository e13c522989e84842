import { readFile } from 'node:fs/promises';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { derivedPointIds } from '../../evaluation/derive/derived-point-ids';
import { compileSite } from '../../evaluation/site/compile-site';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import { keyPath, type SiteFault } from '../../evaluation/site/site-fault';
import { catalogueEntries } from './catalogue-entries';
import type { LineFault } from './line-fault';
import { readYaml } from './read-yaml';

export interface ReadSite {
  readonly site: CompiledSite;
  readonly warnings: readonly LineFault[];
}

/** The text of a site file → a site that may be run, or every fault with line and key, in the order of lines. */
export function siteFromText(text: string): Result<ReadSite, readonly LineFault[]> {
  const yaml = readYaml(text);
  if (!yaml.ok) return yaml;
  const { value, lineOf } = yaml.value;
  const withLine = ({ path, message }: SiteFault): LineFault => ({ line: lineOf(path), key: keyPath(path), message });
  const compiled = compileSite(value, derivedPointIds, catalogueEntries);
  if (compiled.ok) return ok({ site: compiled.value.site, warnings: compiled.value.warnings.map(withLine) });
  return fail(compiled.fault.map(withLine).sort((a, b) => a.line - b.line));
}

/** Reads and compiles a site file; a file that cannot be read is a fault like another. */
export async function readSiteFile(path: string): Promise<Result<ReadSite, readonly LineFault[]>> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (cause) {
    const code = cause instanceof Error && 'code' in cause ? String(cause.code) : 'unreadable';
    return fail([
      { line: 1, key: '', message: `the file cannot be read (${code}); check its name and who may read it` },
    ]);
  }
  return siteFromText(text);
}
