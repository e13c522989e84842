import { usable, type UnitContext } from '../judge-context';
import { stoppedModes } from '../modes-of-rules';
import { chipsLoaded } from './chips-loaded';
import { powerLost } from './power-lost';

/**
 * Is the transfer pump meant to run? Its command says so; else a mode point; else, as the mode is only inferred from this very
 * feedback, chips that give off heat, or a failure of power that took the vacuum source as well. Null: not known.
 */
export function pumpWanted(context: UnitContext): boolean | null {
  const command = usable(context.state, context.slots.pumpCommand);
  if (!Number.isNaN(command)) return command >= 0.5;
  if (context.slots.pumpCommand >= 0) return null;
  if (context.modeTold) return !stoppedModes.includes(context.mode);
  return powerLost(context) || (chipsLoaded(context) ?? false);
}
