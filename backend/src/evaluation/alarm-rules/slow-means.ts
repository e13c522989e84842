import type { CompiledSite } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import { usable } from './judge-context';
import type { UnitSlots } from './unit-slots';

/** Weather and the air of a hall move within hours: means follow with this time constant, s. Own rule. */
const memoryS = 6 * 3600;

/** Means of some hours, by hall; NaN before the first. */
export interface HallMeans {
  readonly ambientPa: Float64Array;
  readonly dewPointC: Float64Array;
}

/** The same by unit, of what is the unit's own: highest pressure of its wetted nodes, and its coldest surface. */
export interface UnitMeans {
  readonly highestPa: Float64Array;
  readonly coldestC: Float64Array;
}

export const createHallMeans = (halls: number): HallMeans => ({ ambientPa: unknown(halls), dewPointC: unknown(halls) });
export const createUnitMeans = (units: number): UnitMeans => ({ highestPa: unknown(units), coldestC: unknown(units) });

const unknown = (count: number): Float64Array => new Float64Array(count).fill(Number.NaN);

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
  const share = Math.min(1, elapsedS / memoryS);
  const { hallMeans, unitMeans } = view;
  follow(hallMeans.ambientPa, hall, ambientOf(view, hall), share);
  follow(hallMeans.dewPointC, hall, dewPointOf(view, hall), share);
  for (const unit of view.site.halls[hall]?.units ?? []) {
    follow(unitMeans.highestPa, unit, highestOf(view, hall, unit), share);
    follow(unitMeans.coldestC, unit, coldestOf(view, hall, unit), share);
  }
}

function follow(means: Float64Array, place: number, now: number, share: number): void {
  if (Number.isNaN(now)) return;
  const before = means[place] as number;
  means[place] = Number.isNaN(before) || Number.isNaN(share) ? now : before + (now - before) * share;
}

/** How far the barometer stands below its mean of hours, Pa. NaN where it is bad, or there is none. */
export const ambientFellPa = (view: SlowView, hall: number): number =>
  (view.hallMeans.ambientPa[hall] as number) - ambientOf(view, hall);

/** How far the hall's dew point stands above its mean of hours, K. */
export const dewPointRoseK = (view: SlowView, hall: number): number =>
  dewPointOf(view, hall) - (view.hallMeans.dewPointC[hall] as number);

/** How far the unit's own highest pressure has risen, Pa, in the state that decides its margin. */
export const highestRosePa = (view: SlowView, hall: number, unit: number): number =>
  highestOf(view, hall, unit) - (view.unitMeans.highestPa[unit] as number);

/** How far the unit's own coldest surface has cooled, K. */
export const coldestFellK = (view: SlowView, hall: number, unit: number): number =>
  (view.unitMeans.coldestC[unit] as number) - coldestOf(view, hall, unit);

const ambientOf = ({ site, state }: SlowView, hall: number): number =>
  usable(state, site.halls[hall]?.slot.ambientPressure ?? -1);
const dewPointOf = ({ site, state }: SlowView, hall: number): number =>
  usable(state, site.halls[hall]?.slot.dewPoint ?? -1);
const highestOf = (view: SlowView, hall: number, unit: number): number =>
  ambientOf(view, hall) - usable(view.state, view.unitSlots[unit]?.vacuumMarginWorst ?? -1);
const coldestOf = (view: SlowView, hall: number, unit: number): number =>
  dewPointOf(view, hall) + usable(view.state, view.unitSlots[unit]?.dewPointMargin ?? -1);
