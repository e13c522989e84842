import type { CompiledSite } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import { usable } from './judge-context';
import type { UnitSlots } from './unit-slots';

/** Weather and the air of a hall move within hours: means follow with this time constant, s. Own rule. */
const memoryS = 6 * 3600;
/** After a start they follow faster, so that what stood in its first minutes does not weigh for hours, s. */
const leastMemoryS = 3600;

/** Means of some hours, columns by hall or by unit; NaN before the first. */
export interface SlowMean {
  readonly mean: Float64Array;
  readonly watchedS: Float64Array;
}

export interface HallMeans {
  readonly ambientPa: SlowMean;
  readonly dewPointC: SlowMean;
}

/** The same by unit, of what is the unit's own: highest pressure of its wetted nodes, and its coldest surface. */
export interface UnitMeans {
  readonly highestPa: SlowMean;
  readonly coldestC: SlowMean;
}

export const createHallMeans = (halls: number): HallMeans => ({
  ambientPa: slowMean(halls),
  dewPointC: slowMean(halls),
});
export const createUnitMeans = (units: number): UnitMeans => ({
  highestPa: slowMean(units),
  coldestC: slowMean(units),
});

const slowMean = (count: number): SlowMean => ({
  mean: new Float64Array(count).fill(Number.NaN),
  watchedS: new Float64Array(count),
});

/** What is known of a hall and of its units, and how far each has gone from its mean. */
export interface SlowView {
  readonly site: CompiledSite;
  readonly state: SlotState;
  readonly unitSlots: readonly UnitSlots[];
  readonly hallMeans: HallMeans;
  readonly unitMeans: UnitMeans;
}

/** Takes what stands now; once a second a hall. `elapsedS` NaN: the first time. */
export function learnSlowMeans(view: SlowView, hall: number, elapsedS: number): void {
  const { hallMeans, unitMeans } = view;
  const since = Number.isNaN(elapsedS) ? 0 : elapsedS;
  follow(hallMeans.ambientPa, hall, ambientOf(view, hall), since);
  follow(hallMeans.dewPointC, hall, dewPointOf(view, hall), since);
  for (const unit of view.site.halls[hall]?.units ?? []) {
    follow(unitMeans.highestPa, unit, highestOf(view, hall, unit), since);
    follow(unitMeans.coldestC, unit, coldestOf(view, hall, unit), since);
  }
}

function follow({ mean, watchedS }: SlowMean, place: number, now: number, elapsedS: number): void {
  if (Number.isNaN(now)) return;
  const before = mean[place] as number;
  const watched = (watchedS[place] as number) + elapsedS;
  watchedS[place] = watched;
  const share = Math.min(1, elapsedS / Math.min(memoryS, Math.max(leastMemoryS, watched)));
  mean[place] = Number.isNaN(before) ? now : before + (now - before) * share;
}

/** How far the barometer stands below its mean of hours, Pa. NaN where it is bad, or there is none. */
export const ambientFellPa = (view: SlowView, hall: number): number =>
  (view.hallMeans.ambientPa.mean[hall] as number) - ambientOf(view, hall);

/** How far the hall's dew point stands above its mean of hours, K. */
export const dewPointRoseK = (view: SlowView, hall: number): number =>
  dewPointOf(view, hall) - (view.hallMeans.dewPointC.mean[hall] as number);

/** How far the unit's own highest pressure has risen, Pa, in the state that decides its margin. */
export const highestRosePa = (view: SlowView, hall: number, unit: number): number =>
  highestOf(view, hall, unit) - (view.unitMeans.highestPa.mean[unit] as number);

/** How far the unit's own coldest surface has cooled, K. */
export const coldestFellK = (view: SlowView, hall: number, unit: number): number =>
  (view.unitMeans.coldestC.mean[unit] as number) - coldestOf(view, hall, unit);

const ambientOf = ({ site, state }: SlowView, hall: number): number =>
  usable(state, site.halls[hall]?.slot.ambientPressure ?? -1);
const dewPointOf = ({ site, state }: SlowView, hall: number): number =>
  usable(state, site.halls[hall]?.slot.dewPoint ?? -1);
const highestOf = (view: SlowView, hall: number, unit: number): number =>
  ambientOf(view, hall) - usable(view.state, view.unitSlots[unit]?.vacuumMarginWorst ?? -1);
const coldestOf = (view: SlowView, hall: number, unit: number): number =>
  dewPointOf(view, hall) + usable(view.state, view.unitSlots[unit]?.dewPointMargin ?? -1);
