import { gaugeToAbsolute, vacuumToAbsolute } from '@ebbline/shared/units/pressure-reference';
import { pascalAbsolute, pascalDifference, pascalGauge } from '@ebbline/shared/units/quantity';
import { Reference, type CompiledSite } from '../site/compiled-site';
import { badBits, reasonBit } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import type { IntakeContext } from './intake-context';

/** Whether a number of this slot is told against ambient. */
export const isAgainstAmbient = (site: CompiledSite, slot: number): boolean =>
  (site.slots.reference[slot] ?? 0) >= Reference.gauge;

const barometerReads = (state: SlotState, context: IntakeContext, slot: number): number => {
  const barometer = context.barometerSlot[slot] ?? -1;
  return barometer >= 0 && ((state.reasons[barometer] ?? badBits) & badBits) === 0 ? barometer : -1;
};

/**
 * Own number → absolute, with the hall's barometer as it reads now, or else the standard atmosphere of the
 * site's altitude. Other points come back unchanged.
 */
export function toAbsolute(
  site: CompiledSite,
  state: SlotState,
  context: IntakeContext,
  slot: number,
  own: number,
): number {
  if (!isAgainstAmbient(site, slot)) return own;
  const barometer = barometerReads(state, context, slot);
  const ambient = pascalAbsolute(
    barometer < 0 ? context.standardAmbientPa : (state.value[barometer] ?? context.standardAmbientPa),
  );
  return site.slots.reference[slot] === Reference.gauge
    ? gaugeToAbsolute(pascalGauge(own), ambient)
    : vacuumToAbsolute(pascalDifference(own), ambient);
}

/** Reasons that the conversion brings along: an estimated ambient, or a barometer that is uncertain itself. */
export function ambientReasons(site: CompiledSite, state: SlotState, context: IntakeContext, slot: number): number {
  if (!isAgainstAmbient(site, slot)) return 0;
  const barometer = barometerReads(state, context, slot);
  if (barometer < 0) return reasonBit.ambientEstimated;
  return state.reasons[barometer] === 0 ? 0 : reasonBit.inputUncertain;
}
