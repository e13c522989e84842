import type { SiteCheck, SiteState } from '@ebbline/shared/contract/site-state';
import { siteCheckSchema, siteStateSchema } from '@ebbline/shared/contract/site-state';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** A large file takes a while to be compiled. ms */
const checkTimeOutMs = 30_000;

export const readSiteState = (): Promise<Result<SiteState>> => request('/api/site/state', siteStateSchema);

/** Checks a text as a site file; nothing comes into force by it. */
export const checkSite = (text: string): Promise<Result<SiteCheck>> =>
  request('/api/site/check', siteCheckSchema, { body: { text }, timeOutMs: checkTimeOutMs });

/** Reads the site file anew. A faulty one is refused whole, and the one before stays in force. */
export const reloadSite = (): Promise<Result<SiteState>> =>
  request('/api/site/reload', siteStateSchema, { body: {}, timeOutMs: checkTimeOutMs });
