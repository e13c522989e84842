import type { CompiledSite } from '../site/compiled-site';
import { pascalAbsolute } from '@ebbline/shared/units/quantity';
import type { SlotState } from '../slots/slot-state';
import { readAmbient, type Ambient } from './ambient';
import { followsAmbient, standardUncertainty } from './standard-uncertainty';
import type { BudgetPart } from './uncertainty-budget';

/** What the uncertainty of a reading consists of: its own accuracy, and the barometer's where it was told against ambient. */
export function explainMeasured(
  site: CompiledSite,
  state: SlotState,
  slot: number,
  barometerSlot: number,
): readonly BudgetPart[] {
  const own = {
    from: 'accuracy',
    contribution: standardUncertainty(site.slots, state, slot),
    degreesOfFreedom: Infinity,
  };
  if (!followsAmbient(site.slots, slot)) return [own];
  const ambient: Ambient = { pressure: pascalAbsolute(Number.NaN), u: Number.NaN, reasons: 0, sourceMs: Number.NaN };
  readAmbient(site, state, barometerSlot, ambient);
  return [own, { from: 'ambient.pressure', contribution: ambient.u, degreesOfFreedom: Infinity }];
}
