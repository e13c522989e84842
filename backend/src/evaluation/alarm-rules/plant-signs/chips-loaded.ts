import { loadedShare, loadedWatt } from '../catalogue/flow-2';
import { usable, type UnitContext } from '../judge-context';

/** Chips of the unit give off heat worth cooling; null where their power is not known. */
export function chipsLoaded({ slots, state, unit }: UnitContext): boolean | null {
  const power = usable(state, slots.chipPower);
  if (Number.isNaN(power)) return null;
  const rated = unit.design.ratedHeatW;
  return power > (rated === null ? loadedWatt : rated * loadedShare);
}
