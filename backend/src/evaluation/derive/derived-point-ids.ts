import { derivedPointsOfHall, derivedPointsOfUnit } from './derived-points';

/**
 * Points that `deriveUnit` and `deriveHall` write, in the order in which they are worked out. The site
 * compiler gives each a slot; `branch.<id>.…` once for every branch. A slot that is left out is skipped.
 */
export const derivedPointIds: { readonly hall: readonly string[]; readonly unit: readonly string[] } = {
  hall: derivedPointsOfHall.map(({ id }) => id),
  unit: derivedPointsOfUnit.map(({ id }) => id),
};
