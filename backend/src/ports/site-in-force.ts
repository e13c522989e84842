import type { SiteState } from '@ebbline/shared/contract/site-state';

/** Which site file is in force; a newer content on the disk takes its place by itself, or by `reload` at once. */
export interface SiteInForce {
  state(): SiteState;
  /** Reads the file now. Resolves once its content is in force, or refused: the state says which. */
  reload(): Promise<SiteState>;
}

export const SITE_IN_FORCE = Symbol('SiteInForce');
