import type { PointList } from '@ebbline/shared/contract/http-api';
import { pointListSchema } from '@ebbline/shared/contract/http-api';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** Every point of a unit and of its hall, with its newest value. */
export const readPoints = (unit: string): Promise<Result<PointList>> =>
  request(`/api/units/${encodeURIComponent(unit)}/points`, pointListSchema);
