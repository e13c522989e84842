import type { PastUncertainty } from '@ebbline/shared/contract/trends';
import { fail, ok } from '@ebbline/shared/errors/result';
import type { ShallowRef } from 'vue';
import { readUncertainty } from '../api/trends';
import type { TrendName } from '../text/trend-link';
import type { OverSpan } from './use-over-span';
import { useOverSpan } from './use-over-span';

export interface PastUncertaintyOptions {
  readonly points: () => readonly TrendName[];
  /** False where it is not to be drawn: nothing is asked for then. */
  readonly wanted: () => boolean;
  readonly span: () => { readonly fromMs: number; readonly toMs: number } | null;
  readonly following: () => boolean;
  /** Default: the server. */
  readonly read?: typeof readUncertainty;
}

/** How sure the points of a trend were at some moments of a span, unit by unit. Where one unit can't be told, none is. */
export function usePastUncertainty({
  following,
  points,
  read = readUncertainty,
  span,
  wanted,
}: PastUncertaintyOptions): Readonly<ShallowRef<OverSpan<readonly PastUncertainty[]>>> {
  const byUnit = (): ReadonlyMap<string, readonly string[]> => {
    const units = new Map<string, readonly string[]>();
    for (const { point, unit } of points()) units.set(unit, [...(units.get(unit) ?? []), point]);
    return units;
  };
  return useOverSpan({
    wish: () => (wanted() && points().length > 0 ? JSON.stringify([...byUnit()]) : null),
    span,
    following,
    isPart: (found) => found.some(({ pending }) => pending > 0),
    async read(time) {
      const all: PastUncertainty[] = [];
      for (const [unit, names] of byUnit()) {
        const reply = await read(unit, names, time);
        if (!reply.ok) return fail(reply.fault);
        all.push(reply.value);
      }
      return ok(all);
    },
  });
}
