import type { Standing } from './annunciation';
import type { Period } from './period';

/** An alarm that stands longer is stale. ANSI/ISA-18.2-2016, usual age. */
export const staleAfterMs = 86_400_000;
const dayMs = 86_400_000;

/** What was stale at some time of the period, the oldest first. */
export function staleOf(standings: readonly Standing[], { fromMs, toMs }: Period): Standing[] {
  return standings
    .filter((one) => staleFromMs(one) < toMs && one.toMs > fromMs && isStaleBefore(one, toMs))
    .sort((a, b) => a.fromMs - b.fromMs);
}

/** Most alarms that were stale on one day; days are counted from the start of the period. */
export function mostStaleOnADay(standings: readonly Standing[], { fromMs, toMs }: Period): number {
  let most = 0;
  const stale = staleOf(standings, { fromMs, toMs });
  for (let dayStartMs = fromMs; dayStartMs < toMs; dayStartMs += dayMs) {
    const dayEndMs = Math.min(toMs, dayStartMs + dayMs);
    const onDay = stale.filter(
      (one) => staleFromMs(one) < dayEndMs && one.toMs > Math.max(dayStartMs, staleFromMs(one)),
    );
    most = Math.max(most, new Set(onDay.map(({ alarm }) => alarm)).size);
  }
  return most;
}

const staleFromMs = ({ fromMs }: Standing): number => fromMs + staleAfterMs;
const isStaleBefore = (one: Standing, toMs: number): boolean => Math.min(one.toMs, toMs) - one.fromMs > staleAfterMs;
