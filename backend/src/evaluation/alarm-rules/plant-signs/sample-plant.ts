import { usable, type UnitContext } from '../judge-context';
import { sampleRuns } from './sample-runs';

/** Once a second, before the rules: what several of them look at. */
export function samplePlant(context: UnitContext): void {
  sampleRuns(context);
  const { nowMs, plant, slots, state, unitIndex } = context;
  if (slots.filterResistance >= 0) plant.filterResistance.push(unitIndex, usable(state, slots.filterResistance), nowMs);
  if (slots.filterPressureDrop >= 0)
    plant.filterPressureDrop.push(unitIndex, usable(state, slots.filterPressureDrop), nowMs);
}
