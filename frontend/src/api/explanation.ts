import type { Explanation } from '@ebbline/shared/contract/explanation';
import { explanationSchema } from '@ebbline/shared/contract/explanation';
import type { Result } from '@ebbline/shared/errors/result';
import type { ValueName } from '../text/value-link';
import { request } from './request';

/** What stands behind one value of a unit or of a hall, as it is now. */
export const readExplanation = (of: ValueName): Promise<Result<Explanation>> => {
  const holder =
    'unit' in of ? `/api/units/${encodeURIComponent(of.unit)}` : `/api/halls/${encodeURIComponent(of.hall)}`;
  return request(`${holder}/points/${encodeURIComponent(of.point)}/explanation`, explanationSchema);
};
