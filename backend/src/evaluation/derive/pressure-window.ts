import type { PressureWindow } from '@ebbline/shared/contract/live-feed';
import type { CompiledSite } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import { lowerWallGuardPa, vacuumMarginGuardPa } from './derive-constants';
import { figureOf, finiteOrNull } from './figure';
import { lowerWallKindAt } from './nearest-lower-wall';
import { nodeExtreme } from './node-pressure';
import { readUnitFrame } from './unit-frame';

/** Lowest and highest wetted pressure of the last hour; null until there is one. */
export interface HourExtremes {
  readonly lowestPa: number | null;
  readonly highestPa: number | null;
}

/**
 * One loop between its two walls, for the strip on the screens. Computed when asked; `deriveUnit` ran before it
 * with the same slots and the same `stopped`. Null where something can't be known.
 */
export function pressureWindow(
  site: CompiledSite,
  state: SlotState,
  unitIndex: number,
  nowMs: number,
  hour: HourExtremes,
  stopped = false,
): PressureWindow {
  const frame = readUnitFrame(site, state, unitIndex, nowMs, stopped);
  const { plan } = frame;
  const slot = plan.slot.lowerWallMargin;
  const lowerWallMargin = figureOf(state, slot, nowMs);
  const place = state.where[slot] ?? -1;
  // Wall, kind and guard follow the derived point, so that the strip never shows another wall than the alarm judges.
  const kind = lowerWallMargin.value === null || place < 0 ? null : lowerWallKindAt(site, unitIndex, place);
  const lowest = nodeExtreme(frame, -1);
  const highest = nodeExtreme(frame, 1);
  return {
    lowestPa: lowest?.pressure ?? null,
    lowestWhere: lowest?.node.name ?? null,
    highestPa: highest?.pressure ?? null,
    highestWhere: highest?.node.name ?? null,
    ambientPa: finiteOrNull(frame.ambient.pressure),
    lowerWallPa: kind !== null && lowest !== null ? lowest.pressure - (lowerWallMargin.value ?? Number.NaN) : null,
    lowerWallKind: kind,
    lowerWallWhere: kind === null ? null : (plan.holder.places[place] ?? null),
    lowerWallMargin,
    vacuumMargin: figureOf(state, plan.slot.vacuumMargin, nowMs),
    vacuumMarginWorst: figureOf(state, plan.slot.vacuumMarginWorst, nowMs),
    lowerWallGuardPa: kind === null ? null : lowerWallGuardPa[kind],
    vacuumMarginGuardPa: plan.unit.limits.get('MARGIN-1')?.limit ?? vacuumMarginGuardPa,
    hourLowestPa: hour.lowestPa,
    hourHighestPa: hour.highestPa,
  };
}
