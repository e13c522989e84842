import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { derivedPointIds } from '../evaluation/derive/derived-point-ids';
import { compileSite } from '../evaluation/site/compile-site';
import type { CompiledSite } from '../evaluation/site/compiled-site';
import { keyPath } from '../evaluation/site/site-fault';
import { StartFault } from './start-fault';

export async function openSite(file: string, say: (line: string) => void): Promise<CompiledSite> {
  const compiled = compileSite(parse(readFileSync(file, 'utf8')), derivedPointIds);
  if (!compiled.ok) throw new StartFault(compiled.fault.map(({ path, message }) => `${keyPath(path)}: ${message}`));
  const { site } = compiled.value;
  say(`Site: ${site.name} (${site.halls.length} halls, ${site.units.length} units)`);
  return site;
}
