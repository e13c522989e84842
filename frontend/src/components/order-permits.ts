import type { Permit, PermitState } from '@ebbline/shared/contract/permit';

const rank: { readonly [S in PermitState]: number } = { overdue: 0, open: 1, closed: 2 };

/** Overdue first, then by what ends first. */
export function orderPermits(permits: readonly Permit[]): readonly Permit[] {
  return [...permits].sort(
    (one, other) =>
      rank[one.state] - rank[other.state] ||
      Date.parse(one.until) - Date.parse(other.until) ||
      one.id.localeCompare(other.id),
  );
}
