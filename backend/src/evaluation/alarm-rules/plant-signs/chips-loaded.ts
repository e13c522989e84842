import { usable, type UnitContext } from '../judge-context';

/** Chips count as loaded above this share of the unit's rated heat. */
const loadedShare = 0.1;
/** The same where no rated heat is stated, W. */
const loadedWatt = 1000;

/** Chips of the unit give off heat worth cooling; null where their power is not known. */
export function chipsLoaded({ slots, state, unit }: UnitContext): boolean | null {
  const power = usable(state, slots.chipPower);
  if (Number.isNaN(power)) return null;
  const rated = unit.design.ratedHeatW;
  return power > (rated === null ? loadedWatt : rated * loadedShare);
}
