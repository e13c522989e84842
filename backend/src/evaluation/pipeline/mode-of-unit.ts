import { modes, type Mode } from '@ebbline/shared/contract/http-api';
import { usable } from '../alarm-rules/judge-context';
import type { UnitSlots } from '../alarm-rules/unit-slots';
import type { SlotState } from '../slots/slot-state';

export interface ModeFound {
  readonly mode: Mode;
  /** False: nothing says which; it counts as running. */
  readonly known: boolean;
  /** By a mode point, not inferred from feedback. */
  readonly told: boolean;
}

const found = (mode: Mode, known: boolean, told: boolean): ModeFound => ({ mode, known, told });

const toldModes: readonly ModeFound[] = modes.map((mode) => found(mode, true, true));
const running = found('running', true, false);
const standby = found('standby', true, false);
const off = found('off', true, false);
const unknown = found('running', false, false);

/**
 * Mode of a loop: the mode point where there is one; else from running feedback of pump, standby pump and vacuum source; else not
 * known, which counts as running. A vacuum source may rest between its cycles: alone it says nothing against running. A standby
 * pump that nobody hears of is taken to stand: what is off by that is held, see `stopWasMeant`.
 */
export function modeOfUnit(state: SlotState, slots: UnitSlots): ModeFound {
  const told = toldModes[usable(state, slots.mode)];
  if (told !== undefined) return told;
  const pump = usable(state, slots.pumpRunning);
  if (pump >= 0.5 || usable(state, slots.pumpStandbyRunning) >= 0.5) return running;
  if (Number.isNaN(pump)) return unknown;
  return usable(state, slots.vacuumRunning) >= 0.5 ? standby : off;
}
