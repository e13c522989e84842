import type { UnitList } from '@ebbline/shared/contract/http-api';
import { unitListSchema } from '@ebbline/shared/contract/http-api';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** Every unit of the site with its mode and what stands on it. */
export const readUnits = (): Promise<Result<UnitList>> => request('/api/units', unitListSchema);
