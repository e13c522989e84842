import type { Explanation } from '@ebbline/shared/contract/explanation';
import { explanationSchema } from '@ebbline/shared/contract/explanation';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** What stands behind one value of a unit or of its hall, as it is now. */
export const readExplanation = (unit: string, point: string): Promise<Result<Explanation>> =>
  request(`/api/units/${encodeURIComponent(unit)}/points/${encodeURIComponent(point)}/explanation`, explanationSchema);
