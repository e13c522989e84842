import type { Explanation } from '@ebbline/shared/contract/explanation';
import { explanationSchema } from '@ebbline/shared/contract/explanation';
import type { Result } from '@ebbline/shared/errors/result';
import { request } from './request';

/** A point of a unit, or of a hall. */
type PointOf = { readonly unit: string; readonly point: string } | { readonly hall: string; readonly point: string };

/** What stands behind one value of a unit or of a hall, as it is now. */
export const readExplanation = (of: PointOf): Promise<Result<Explanation>> => {
  const holder =
    'unit' in of ? `/api/units/${encodeURIComponent(of.unit)}` : `/api/halls/${encodeURIComponent(of.hall)}`;
  return request(`${holder}/points/${encodeURIComponent(of.point)}/explanation`, explanationSchema);
};
