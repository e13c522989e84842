import type { Site } from '@ebbline/shared/contract/http-api';
import { siteSchema } from '@ebbline/shared/contract/http-api';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

export const readSite = (): Promise<Result<Site>> => request('/api/site', siteSchema);
