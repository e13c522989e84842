import type { Annunciation } from './annunciation';
import type { Burst } from './chattering';

/** Gone sooner than this and unseen, nobody could have acted: a person reads, finds the unit, and only then acts. Own assumption. */
export const fleetingMs = 60_000;

/** Annunciations whose condition went before anyone could act. One that chatters is told as that, not here. */
export function fleetingOf(annunciations: readonly Annunciation[], bursts: readonly Burst[]): Annunciation[] {
  const chattered = new Set(bursts.flatMap((burst) => burst.annunciations));
  return annunciations.filter((told) => isFleeting(told) && !chattered.has(told));
}

function isFleeting({ atMs, clearedMs, acknowledgedMs }: Annunciation): boolean {
  if (clearedMs === null || clearedMs - atMs >= fleetingMs) return false;
  return acknowledgedMs === null || acknowledgedMs > clearedMs;
}
