import { combine2, expanded } from '@ebbline/shared/uncertainty/combine';
import { pascalAbsolute } from '@ebbline/shared/units/quantity';
import type { CompiledSite } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';
import { readAmbient, type Ambient } from './ambient';
import { followsAmbient, standardUncertainty } from './standard-uncertainty';

const ambient: Ambient = { pressure: pascalAbsolute(Number.NaN), u: Number.NaN, reasons: 0, sourceMs: Number.NaN };

/**
 * Expanded uncertainty (for 95.45 %, GUM 6.2.1) of the value that a slot shows, in its unit; NaN where an accuracy is not
 * stated. Of a measured point from the half-widths of the site file; a gauge or vacuum reading is shown as an absolute
 * pressure, so the barometer's uncertainty (or that of the estimate in its place) is in it.
 */
export function readingUncertainty(site: CompiledSite, state: SlotState, slot: number): number {
  if (site.slots.measured[slot] !== 1) return state.expandedUncertainty[slot] ?? Number.NaN;
  const own = standardUncertainty(site.slots, state, slot);
  if (!followsAmbient(site.slots, slot)) return expanded(own);
  readAmbient(site, state, barometerOf(site, site.slots.holder[slot] ?? -1), ambient);
  return expanded(combine2(own, ambient.u));
}

const barometersOfSite = new WeakMap<CompiledSite, Int32Array>();

/** Slot of the barometer of a holder's hall; −1 where it has none. */
function barometerOf(site: CompiledSite, holder: number): number {
  let barometers = barometersOfSite.get(site);
  if (barometers === undefined) {
    barometers = new Int32Array(site.holders.length).fill(-1);
    for (const hall of site.halls) {
      barometers[hall.holder] = hall.slot.ambientPressure;
      for (const unit of hall.units) barometers[site.units[unit]?.holder ?? -1] = hall.slot.ambientPressure;
    }
    barometersOfSite.set(site, barometers);
  }
  return barometers[holder] ?? -1;
}
