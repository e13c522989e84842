import type { ClosePermitRequest, OpenPermitRequest, Permit } from '@ebbline/shared/contract/permit';
import { permitSchema } from '@ebbline/shared/contract/permit';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** Resolves with the permit as the journal holds it now. */
export const openPermit = (wish: OpenPermitRequest): Promise<Result<Permit>> =>
  request('/api/permits', permitSchema, { body: wish });

export const closePermit = (permit: string, wish: ClosePermitRequest): Promise<Result<Permit>> =>
  request(`/api/permits/${encodeURIComponent(permit)}/close`, permitSchema, { body: wish });
