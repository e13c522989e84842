import type { SiteCheck, SiteState } from '@ebbline/shared/contract/site-state';
import { checkSite, readSiteState, reloadSite } from '../api/site-file';
import type { OneAct } from './use-acting';
import { useActing } from './use-acting';
import type { Polled } from './use-polled';
import { usePolled } from './use-polled';

/** Which site file is in force. */
export const useSiteState = (): Polled<SiteState> => usePolled(readSiteState, { everyMs: 5000 });

/** Reads the site file anew. */
export const useReloadSite = (): OneAct<null, SiteState> => useActing<null, SiteState>(reloadSite);

/** Checks a text as a site file. */
export const useCheckSite = (): OneAct<string, SiteCheck> => useActing(checkSite);
