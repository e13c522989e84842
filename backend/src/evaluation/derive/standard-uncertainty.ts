import { combine3, rectangular } from '@ebbline/shared/uncertainty/combine';
import { coverageFactorOf } from '@ebbline/shared/uncertainty/degrees-of-freedom';
import { Reference, type SlotTable } from '../site/compiled-site';
import type { SlotState } from '../slots/slot-state';

/**
 * Standard uncertainty of the value in a slot, in its unit; NaN where none is stated. Accuracies of the site
 * file are half-widths with nothing more known about them (rectangular, GUM 4.3.7); an absolute and a
 * relative part add, as makers print them: ± (0.15 + 0.002 t). What certificates state adds as squares (normal, 4.3.3).
 */
export function standardUncertainty(slots: SlotTable, state: SlotState, slot: number): number {
  if (slot < 0) return Number.NaN;
  if (slots.measured[slot] !== 1)
    return (state.expandedUncertainty[slot] as number) / coverageFactorOf(state.degreesOfFreedom[slot] as number);
  return uncertaintyOfReading(slots, slot, state.value[slot] ?? Number.NaN);
}

/** The same of a measured point, for a value that it had at some time. */
export function uncertaintyOfReading(slots: SlotTable, slot: number, value: number): number {
  const absolute = slots.accuracyAbsolute[slot] ?? Number.NaN;
  const relative = slots.accuracyRelative[slot] ?? Number.NaN;
  const ofReading = relative * Math.abs(value);
  const band = Number.isNaN(absolute) ? ofReading : Number.isNaN(relative) ? absolute : absolute + ofReading;
  const normal = slots.accuracyNormalAbsolute[slot] ?? 0;
  const normalRelative = slots.accuracyNormalRelative[slot] ?? 0;
  if (normal === 0 && normalRelative === 0) return rectangular(band);
  return combine3(rectangular(band), normal, normalRelative * value);
}

/** Whether a pressure was told against ambient: then its error against ambient holds no barometer, its absolute one does. */
export function followsAmbient(slots: SlotTable, slot: number): boolean {
  const reference = slots.reference[slot];
  return reference === Reference.gauge || reference === Reference.vacuum;
}
