import type { SiteCheck } from '@ebbline/shared/contract/site-state';
import type { SiteChecker } from '../../ports/site-check';
import type { LineFault } from './line-fault';
import { siteFromText } from './read-site-file';
import { summarizeSite } from './summarize-site';

/** Checks a text as the running program would read it; of what it includes only the shipped templates are known. */
export const siteTextChecker: SiteChecker = {
  check(text): SiteCheck {
    const read = siteFromText(text);
    if (!read.ok) return { accepted: false, summary: null, faults: read.fault.map(asTold), warnings: [] };
    const { site, warnings } = read.value;
    return { accepted: true, summary: summarizeSite(site), faults: [], warnings: warnings.map(asTold) };
  },
};

const asTold = ({ line, key, message }: LineFault): SiteCheck['faults'][number] => ({ line, key, message });
