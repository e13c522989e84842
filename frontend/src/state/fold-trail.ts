import type { HallTrails, Trail } from '@ebbline/shared/contract/hall-trails';
import { trailMinutes } from '@ebbline/shared/contract/hall-trails';

/** A trail and the minute that its last place holds, counted since 1970. */
export interface KeptTrail extends Trail {
  readonly minute: number;
}

const minuteMs = 60_000;
export const minuteOf = (time: string): number => Math.floor(Date.parse(time) / minuteMs);

/** Trails as they were read, by unit. */
export function keptOf({ minute, trails }: HallTrails): ReadonlyMap<string, KeptTrail> {
  if (minute === null) return new Map();
  const at = minuteOf(minute);
  return new Map(trails.map(({ unit, lowestPa, highestPa }) => [unit, { minute: at, lowestPa, highestPa }]));
}

const empty = (): null[] => Array<null>(trailMinutes).fill(null);
export const noTrail = (minute: number): KeptTrail => ({ minute, lowestPa: empty(), highestPa: empty() });

/**
 * A trail gone on with what is seen now: always an hour long, whatever is folded in. The same object where nothing changes by it.
 * @param minute that runs, counted since 1970; one from before the trail's last leaves it as it is: whoever read it knew more
 * @param lowestPa null is no observation
 */
export function foldTrail(
  trail: KeptTrail,
  minute: number,
  lowestPa: number | null,
  highestPa: number | null,
): KeptTrail {
  if (minute < trail.minute) return trail;
  const moved = moveTo(trail, minute);
  if (lowestPa === null || highestPa === null) return moved;
  const [low, high] = [Math.round(lowestPa), Math.round(highestPa)];
  const [lowBefore, highBefore] = [moved.lowestPa.at(-1) ?? null, moved.highestPa.at(-1) ?? null];
  if (lowBefore !== null && highBefore !== null && low >= lowBefore && high <= highBefore) return moved;
  return {
    minute,
    lowestPa: withLast(moved.lowestPa, Math.min(low, lowBefore ?? low)),
    highestPa: withLast(moved.highestPa, Math.max(high, highBefore ?? high)),
  };
}

const withLast = (cells: Trail['lowestPa'], pa: number): (number | null)[] => [...cells.slice(0, -1), pa];

function moveTo(trail: KeptTrail, minute: number): KeptTrail {
  const by = minute - trail.minute;
  if (by === 0) return trail;
  if (by >= trailMinutes) return noTrail(minute);
  const gone = empty().slice(0, by);
  return {
    minute,
    lowestPa: [...trail.lowestPa.slice(by), ...gone],
    highestPa: [...trail.highestPa.slice(by), ...gone],
  };
}
