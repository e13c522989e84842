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
  for (const { place, proposals } of ranked)
    for (const one of proposals) {
      const known = best.get(keyOf(one));
      if (known === undefined || one.score > known.score) best.set(keyOf(one), { place, score: one.score });
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
