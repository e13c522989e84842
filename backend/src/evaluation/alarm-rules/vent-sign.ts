import { percentText } from './details/quantity-text';
import { usable, type UnitContext } from './judge-context';

/** A bleed further from its command than so much of its stroke is not on its way. */
const off = 0.1;

/** What the bleed of the supply tank does against its command; null where it follows, or is not known. */
export function ventSign({ slots, state }: UnitContext): string | null {
  const command = usable(state, slots.supplyTankVentCommand);
  const position = usable(state, slots.supplyTankVentPosition);
  if (!(Math.abs(command - position) > off)) return null;
  const stands = `told ${percentText(command)}, stands at ${percentText(position)}`;
  return position < command ? `The vent is not opening: ${stands}.` : `The vent is not closing: ${stands}.`;
}
