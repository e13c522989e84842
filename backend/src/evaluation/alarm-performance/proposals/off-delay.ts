import type { Annunciation } from '../annunciation';
import type { Burst } from '../chattering';

/** Present delays of an entry, ms. */
export interface Delays {
  readonly onDelayMs: number;
  readonly offDelayMs: number;
}

/** A stretch within a spell of chattering in which the condition was gone, ms. */
export interface Pause {
  readonly fromMs: number;
  readonly toMs: number;
}

/** Never longer than this: an alarm that stands on long after its condition has gone is not believed. Own rule. */
export const longestOffDelayMs = 600_000;

/**
 * Where the condition was gone between two annunciations of a spell. It went `offDelayMs` before the alarm cleared, and came back
 * `onDelayMs` before it was told again.
 */
export function pausesOf({ annunciations }: Burst, { onDelayMs, offDelayMs }: Delays): Pause[] {
  return annunciations.slice(1).flatMap((next, i) => {
    const clearedMs = annunciations[i]?.clearedMs ?? null;
    if (clearedMs === null) return [];
    const [fromMs, toMs] = [clearedMs - offDelayMs, next.atMs - onDelayMs];
    return toMs > fromMs ? [{ fromMs, toMs }] : [];
  });
}

/** The off-delay that outlasts every pause, in whole seconds: each spell would have been one alarm. Null where none does. */
export function offDelayOver(
  pauses: readonly Pause[],
): { readonly offDelayMs: number; readonly longestMs: number } | null {
  if (pauses.length === 0) return null;
  const longestMs = pauses.reduce((most, { fromMs, toMs }) => Math.max(most, toMs - fromMs), 0);
  const offDelayMs = (Math.floor(longestMs / 1000) + 1) * 1000;
  return offDelayMs > longestOffDelayMs ? null : { offDelayMs, longestMs };
}

/** How long the condition of a fleeting alarm lasted, ms. */
export const lastedMs = ({ atMs, clearedMs }: Annunciation, { onDelayMs, offDelayMs }: Delays): number =>
  (clearedMs ?? atMs) - offDelayMs - (atMs - onDelayMs);
