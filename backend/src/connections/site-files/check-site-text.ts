import type { SiteCheck } from '@ebbline/shared/contract/site-state';
import type { LineFault } from './line-fault';
import { siteFromText } from './read-site-file';
import { summarizeSite } from './summarize-site';

/** Checks a text as the running program would read it; of what it includes only the shipped templates are known. */
export function checkSiteText(text: string): SiteCheck {
  const read = siteFromText(text);
  if (!read.ok) return { accepted: false, summary: null, faults: read.fault.map(asTold), warnings: [] };
  const { site, warnings } = read.value;
  return { accepted: true, summary: summarizeSite(site), faults: [], warnings: warnings.map(asTold) };
}

/** Why a text was not judged to the end. */
export const notJudged = (message: string): SiteCheck => ({
  accepted: false,
  summary: null,
  faults: [{ line: null, key: '', message }],
  warnings: [],
});

const asTold = ({ line, key, message }: LineFault): SiteCheck['faults'][number] => ({ line, key, message });
