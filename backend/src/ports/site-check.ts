import type { SiteCheck } from '@ebbline/shared/contract/site-state';

/** Says whether a text would do as a site file; nothing is changed by asking. */
export interface SiteChecker {
  check(text: string): SiteCheck;
}

export const SITE_CHECKER = Symbol('SiteChecker');
