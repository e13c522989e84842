import { keep, recall, type UnitContext } from './judge-context';

/** The two cells in which a rule that watches several places keeps which of them were told. */
export interface CellsOfPlaces {
  readonly told: number;
  /** Since when a place shows the condition that was not told, tick time. */
  readonly newSinceMs: number;
}

/** So many places a set can tell apart; all further ones count as the last. */
const mostPlaces = 52;
/** Numbers are exact up to twice as many bits as each half has. */
const half = 2 ** (mostPlaces / 2);

/** The set with one place more. Sets are numbers, one bit a place: a rule keeps nothing else. */
export function withPlace(places: number, place: number): number {
  const bit = 2 ** Math.min(place, mostPlaces - 1);
  return Math.floor(places / bit) % 2 === 1 ? places : places + bit;
}

export const hasPlace = (places: number, place: number): boolean => withPlace(places, place) === places;

/**
 * One alarm for several places: who has acknowledged one of them knows nothing of the next. Gives the places that are to be told now,
 * 0 for none: those that were not told with this alarm and that have shown it for the on-delay. A place that was told
 * stays so until the alarm ends, so that one that flickers is not told again and again.
 * Where a restart lost what was told, all that shows it counts as told. Once a second.
 * @param showing the places that show the condition now
 */
export function placesToTell(
  context: UnitContext,
  cells: CellsOfPlaces,
  showing: number,
  onDelayMs: number,
  active: boolean,
): number {
  const told = recall(context, cells.told);
  // Nearly always nothing shows it, and to read is cheaper than to write.
  if (Number.isNaN(told) && showing === 0) return 0;
  const known = active && !Number.isNaN(told);
  const news = known ? without(showing, told) : 0;
  if (!known) keep(context, cells.told, showing === 0 ? Number.NaN : showing);
  if (news === 0) {
    keep(context, cells.newSinceMs, Number.NaN);
    return 0;
  }
  const sinceMs = recall(context, cells.newSinceMs);
  // Also where the clock was set back.
  const begins = !(sinceMs <= context.nowMs);
  if (begins) keep(context, cells.newSinceMs, context.nowMs);
  if ((begins ? 0 : context.nowMs - sinceMs) < onDelayMs) return 0;
  keep(context, cells.told, told + news);
  keep(context, cells.newSinceMs, Number.NaN);
  return news;
}

/** Bits of whole numbers of at most 32 bits can be compared at once: so half by half. */
const without = (places: number, others: number): number =>
  (Math.floor(places / half) & ~Math.floor(others / half)) * half + ((places % half) & ~(others % half));
