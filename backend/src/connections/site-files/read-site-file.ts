import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { derivedPointIds } from '../../evaluation/derive/derived-point-ids';
import { compileSite } from '../../evaluation/site/compile-site';
import type { CompiledSite } from '../../evaluation/site/compiled-site';
import { keyPath, type SiteFault } from '../../evaluation/site/site-fault';
import { catalogueEntries } from './catalogue-entries';
import { beside, shippedOnly, type IncludeReader } from './include-reader';
import type { LineFault } from './line-fault';
import { mergeWarnings } from './merge-warnings';
import { readYaml } from './read-yaml';
import { takeIn } from './take-in';

export interface ReadSite {
  readonly site: CompiledSite;
  readonly warnings: readonly LineFault[];
}

/** The text of a site file → a site that may be run, or every fault with line and key, in the order of lines. */
export function siteFromText(
  text: string,
  include: IncludeReader = shippedOnly,
): Result<ReadSite, readonly LineFault[]> {
  const yaml = readYaml(text);
  if (!yaml.ok) return yaml;
  const whole = takeIn(yaml.value, include);
  if (!whole.ok) return whole;
  const { value, locate } = whole.value;
  const withLine = ({ path, message }: SiteFault): LineFault => ({ ...locate(path), key: keyPath(path), message });
  const compiled = compileSite(value, derivedPointIds, catalogueEntries);
  if (compiled.ok)
    return ok({ site: compiled.value.site, warnings: mergeWarnings(compiled.value.warnings.map(withLine)) });
  return fail(compiled.fault.map(withLine).sort(byLine));
}

/** The site file's own faults first, then those of each included file. */
const byLine = (a: LineFault, b: LineFault): number => (a.file ?? '').localeCompare(b.file ?? '') || a.line - b.line;

/** A read of the file on the disk: which content it was, and what came of it. */
export interface SiteReading {
  /** SHA-256 of the file with all that it includes; null where it could not be read. */
  readonly contentHash: string | null;
  readonly result: Result<ReadSite, readonly LineFault[]>;
}

/** Reads and compiles a site file with what it includes; a file that cannot be read is a fault like another. */
export async function readSiteWithHash(path: string): Promise<SiteReading> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (cause) {
    const code = cause instanceof Error && 'code' in cause ? String(cause.code) : 'unreadable';
    const message = `the file cannot be read (${code}); check its name and who may read it`;
    return { contentHash: null, result: fail([{ line: 1, key: '', message }]) };
  }
  const hash = createHash('sha256').update(text);
  const include = beside(path);
  const result = siteFromText(text, (name) => {
    const included = include(name);
    hash.update(`\0${name}\0`).update(included.ok ? included.value.text : included.fault);
    return included;
  });
  return { contentHash: hash.digest('hex'), result };
}

export async function readSiteFile(path: string): Promise<Result<ReadSite, readonly LineFault[]>> {
  return (await readSiteWithHash(path)).result;
}
