import { relative } from 'node:path';
import { lineText } from '../connections/site-files/line-fault';
import { readSiteFile } from '../connections/site-files/read-site-file';
import type { CompiledSite } from '../evaluation/site/compiled-site';
import { StartFault } from './start-fault';

/** The site of the environment, or every fault of its file with line and key. */
export async function openSite(file: string, say: (line: string) => void): Promise<CompiledSite> {
  const shown = relative(process.cwd(), file).startsWith('..') ? file : relative(process.cwd(), file);
  const read = await readSiteFile(file);
  if (!read.ok) {
    const lines = read.fault.map((fault) => lineText(shown, fault));
    throw new StartFault([
      ...lines,
      'Mend the site file, or set EBBLINE_SITE to another one; npm run site:check -- FILE checks it.',
    ]);
  }
  const { site, warnings } = read.value;
  for (const warning of warnings) say(lineText(shown, warning));
  say(`Site: ${site.name} (${counted(site.halls.length, 'hall')}, ${counted(site.units.length, 'unit')})`);
  return site;
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
