import { relative } from 'node:path';
import { lineText } from '../connections/site-files/line-fault';
import { readSiteWithHash } from '../connections/site-files/read-site-file';
import type { LoadedSite } from './site-reload';
import { StartFault } from './start-fault';

/** The site of the environment, or every fault of its file with line and key. */
export async function openSite(file: string, say: (line: string) => void): Promise<LoadedSite> {
  const shown = shownPath(file);
  const { contentHash, result } = await readSiteWithHash(file);
  if (!result.ok || contentHash === null) {
    const lines = (result.ok ? [] : result.fault).map((fault) => lineText(shown, fault));
    throw new StartFault([
      ...lines,
      'Mend the site file, or set EBBLINE_SITE to another one; npm run site:check -- FILE checks it.',
    ]);
  }
  const { site, warnings } = result.value;
  if (warnings.length > 0) say(warningsLine(shown, warnings.length));
  say(`Site: ${site.name} (${counted(site.halls.length, 'hall')}, ${counted(site.units.length, 'unit')})`);
  return { site, contentHash, warnings };
}

/** How many there are and where they can be read; the start is no place for pages of them. */
export const warningsLine = (shown: string, count: number): string =>
  `${shown}: ${counted(count, 'warning')}; read ${count === 1 ? 'it' : 'them'} on the Setup screen, or by npm run site:check -- ${shown}`;

/** Relative to where the program was started, where it lies below. */
export const shownPath = (file: string): string => {
  const below = relative(process.cwd(), file);
  return below.startsWith('..') ? file : below;
};

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
