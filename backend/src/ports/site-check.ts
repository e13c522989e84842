import type { TriedLines } from '@ebbline/shared/contract/mapping';
import type { SiteCheck } from '@ebbline/shared/contract/site-state';
import type { Result } from '@ebbline/shared/errors/result';

/** Nothing was judged: `SITE_CHECK_OVERTAKEN`, a newer text took the place of this one while it waited. */
export interface SiteCheckFault {
  readonly code: 'SITE_CHECK_OVERTAKEN';
  readonly message: string;
}

/** Says whether a text would do as a site file; nothing is changed by asking, and nothing else is held up. */
export interface SiteChecker {
  check(text: string): Promise<Result<SiteCheck, SiteCheckFault>>;
  /** The same of the site file in force with lines put into a copy of it. */
  tryLines(lines: string): Promise<Result<TriedLines, SiteCheckFault>>;
}

export const SITE_CHECKER = Symbol('SiteChecker');
