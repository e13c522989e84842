import { geopotentialAltitude, standardPressure } from '@ebbline/shared/fluid-properties/standard-atmosphere';
import { rectangular } from '@ebbline/shared/uncertainty/combine';
import { metre, pascalAbsolute, type PascalAbsolute } from '@ebbline/shared/units/quantity';
import type { CompiledSite } from '../site/compiled-site';
import { badBits, reasonBit } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import { estimatedAmbientHalfWidthPa } from './derive-constants';
import { standardUncertainty } from './standard-uncertainty';

/** Pressure of the room's air with its standard uncertainty and the reasons that it hands on. */
export interface Ambient {
  pressure: PascalAbsolute;
  u: number;
  reasons: number;
  /** Infinity where it was not measured: an estimate has no age. */
  sourceMs: number;
}

/**
 * The hall's barometer; where there is none, or it is bad, the standard atmosphere (ISO 2533) at the site's
 * altitude, marked `ambientEstimated`. Writes into `into`.
 */
export function readAmbient(site: CompiledSite, state: SlotState, barometerSlot: number, into: Ambient): void {
  const reasons = barometerSlot < 0 ? badBits : (state.reasons[barometerSlot] ?? 0);
  if ((reasons & badBits) === 0) {
    into.pressure = pascalAbsolute(state.value[barometerSlot] ?? Number.NaN);
    into.u = standardUncertainty(site.slots, state, barometerSlot);
    into.reasons = reasons === 0 ? 0 : reasonBit.inputUncertain;
    into.sourceMs = state.sourceMs[barometerSlot] ?? Number.NaN;
    return;
  }
  into.pressure = standardPressure(geopotentialAltitude(metre(site.altitudeM)));
  into.u = rectangular(estimatedAmbientHalfWidthPa);
  into.reasons = reasonBit.ambientEstimated;
  into.sourceMs = Infinity;
}
