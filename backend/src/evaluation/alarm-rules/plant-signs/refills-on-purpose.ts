import { modes } from '@ebbline/shared/contract/http-api';
import type { GroupContext } from '../group-context';
import { usable } from '../judge-context';
import { refillModes } from '../modes-of-rules';

/** A unit of the group tells a mode in which people put water in or take it out. Only told, never inferred: no feedback shows it. */
export function refillsOnPurpose({ state, unitSlots, units }: GroupContext): boolean {
  for (const unit of units) {
    const told = modes[usable(state, unitSlots[unit]?.mode ?? -1)];
    if (told !== undefined && refillModes.includes(told)) return true;
  }
  return false;
}
