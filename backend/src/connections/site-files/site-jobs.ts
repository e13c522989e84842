import type { TriedLines } from '@ebbline/shared/contract/mapping';
import type { SiteCheck } from '@ebbline/shared/contract/site-state';
import { checkSiteText } from './check-site-text';
import { readSiteWithHash, type SiteReading } from './read-site-file';
import { tryLines } from './try-lines';

/** What is asked of the one that reads site files: plain data, so that it may be asked across threads. */
export type SiteJob =
  | { readonly job: 'check'; readonly text: string }
  | { readonly job: 'try'; readonly file: string; readonly lines: string }
  | { readonly job: 'read'; readonly file: string; readonly knownHash: string };

/** The file is what is known already: it was not compiled again, as far as the asker is concerned. */
export const unchanged = 'unchanged';

/** What comes of each job. */
export interface SiteJobValue {
  readonly check: SiteCheck;
  readonly try: TriedLines;
  readonly read: SiteReading | typeof unchanged;
}

/** Does a job on the thread that calls it. */
export async function doSiteJob(job: SiteJob): Promise<SiteJobValue[SiteJob['job']]> {
  if (job.job === 'check') return checkSiteText(job.text);
  if (job.job === 'try') return tryLines(job.file, job.lines);
  const reading = await readSiteWithHash(job.file);
  return reading.contentHash === job.knownHash ? unchanged : reading;
}
