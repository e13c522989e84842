import type { HeardPlace } from './heard-place';
import type { Proposal } from './rank-place';

export interface RankedPlace {
  readonly place: HeardPlace;
  readonly proposals: readonly Proposal[];
}

const claimed = -2;

/** Two places are never one point: the one that fits it best keeps it, and at the others it is said which one that is. */
export function settleClaims(
  ranked: readonly RankedPlace[],
  nameOfPlace: (place: HeardPlace) => string,
): readonly RankedPlace[] {
  const best = new Map<string, { readonly place: HeardPlace; readonly score: number }>();
  for (const { place, proposals } of ranked) {
    // What is no more than a second guess claims nothing.
    const [first] = proposals;
    if (first === undefined) continue;
    const known = best.get(keyOf(first));
    if (known === undefined || first.score > known.score) best.set(keyOf(first), { place, score: first.score });
  }
  return ranked.map(({ place, proposals }) => ({
    place,
    proposals: proposals
      .map((one): Proposal => {
        const owner = best.get(keyOf(one))?.place;
        if (owner === undefined || owner === place) return one;
        const text = `${nameOfPlace(owner)} fits it better`;
        return {
          ...one,
          score: one.score + claimed,
          grade: 'possible',
          reasons: [...one.reasons, { speaks: 'against', text }],
        };
      })
      .sort((a, b) => b.score - a.score),
  }));
}

const keyOf = ({ kind, holder, point }: Proposal): string => `${kind} ${holder} ${point}`;
