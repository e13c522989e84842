import type { LimitTrial, StartTrialRequest } from '@ebbline/shared/contract/limit-trial';
import { limitTrialSchema } from '@ebbline/shared/contract/limit-trial';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

const pathOf = (id: string): string => `/api/limit-trials/${encodeURIComponent(id)}`;

/** Resolves with the trial that has begun; what comes of it is asked for. */
export const startTrial = (wish: StartTrialRequest): Promise<Result<LimitTrial>> =>
  request('/api/limit-trials', limitTrialSchema, { body: wish });

export const readTrial = (id: string): Promise<Result<LimitTrial>> => request(pathOf(id), limitTrialSchema);

export const cancelTrial = (id: string): Promise<Result<LimitTrial>> =>
  request(`${pathOf(id)}/cancel`, limitTrialSchema, { body: {} });
