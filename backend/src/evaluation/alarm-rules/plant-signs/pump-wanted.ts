import { usable, type UnitContext } from '../judge-context';
import { startModes, stoppedModes } from '../modes-of-rules';
import { chipsLoaded } from './chips-loaded';
import { powerLost } from './power-lost';

/**
 * Return less supply of a loop that carries heat, K: two Pt100 of class B agree within 1 K at 40 °C (IEC 60751:2022), twice that
 * is surely heat. Own rule. Before a planned stop the load goes first, and the two meet.
 */
const carriesHeatK = 2;

/**
 * Is the transfer pump meant to run? Its command says so; else a mode point, of a start with what is seen besides; else, as the mode is only inferred from this very
 * feedback: chips that give off heat, a failure of power that took the vacuum source as well, or heat in the water in the moment in
 * which the pump was seen to stop. Null: not known, and it is not where nobody saw the pump stop (after a restart), where a
 * temperature was bad then, or where the other units carry the loop and this one may have been put on standby.
 */
export function pumpWanted(context: UnitContext): boolean | null {
  const { plant, slots, state } = context;
  const command = usable(state, slots.pumpCommand);
  if (!Number.isNaN(command)) return command >= 0.5;
  if (slots.pumpCommand >= 0) return null;
  if (context.modeTold) return wantedByMode(context);
  return wantedBySigns(context, plant.runs.pumpStoppedMs, plant.runs.heatInWaterK);
}

/**
 * Without a mode point, as the standby was the last to carry the loop. An order to the lead to run is one to the loop; that the lead
 * rests as ordered says nothing, for so it does after every change-over.
 */
function loopWanted(context: UnitContext): boolean | null {
  const { plant, slots, state } = context;
  const command = usable(state, slots.pumpCommand);
  if (command >= 0.5) return true;
  if (Number.isNaN(command) && slots.pumpCommand >= 0) return null;
  return wantedBySigns(context, plant.runs.loopStoppedMs, plant.runs.loopHeatK);
}

/** @param stoppedMs when it was seen to stop @param heatK return less supply temperature then */
function wantedBySigns(context: UnitContext, stoppedMs: Float64Array, heatK: Float64Array): boolean | null {
  const { unitIndex } = context;
  if (powerLost(context)) return true;
  const loaded = chipsLoaded(context);
  if (loaded !== null) return loaded;
  if (Number.isNaN(stoppedMs[unitIndex]) || othersCarry(context)) return null;
  const carried = heatK[unitIndex] as number;
  return Number.isNaN(carried) ? null : carried > carriesHeatK;
}

/**
 * A start has the pump wait for its vacuum: wanted is it only once it was seen to run in this start, or where chips give off heat.
 * After a loss of power nobody has taken the load off, so there chips count as loaded where their power is not known.
 */
function wantedByMode(context: UnitContext): boolean | null {
  const { mode, plant, unitIndex } = context;
  if (stoppedModes.includes(mode)) return false;
  if (!startModes.includes(mode)) return true;
  const { pumpStoppedMs, startsSinceMs } = plant.runs;
  const ranInStart = (pumpStoppedMs[unitIndex] as number) > (startsSinceMs[unitIndex] as number);
  return ranInStart || (chipsLoaded(context) ?? mode === 'powerReturn') ? true : null;
}

/** As many of the loop's other units run, on their lead or their standby pump, as it needs. */
function othersCarry({ allSlots, site, state, unit, unitIndex }: UnitContext): boolean {
  const loop = site.loops[unit.loop];
  if (loop === undefined || loop.units.length < 2) return false;
  const runs = (other: number): boolean =>
    usable(state, allSlots[other]?.pumpRunning ?? -1) >= 0.5 ||
    usable(state, allSlots[other]?.pumpStandbyRunning ?? -1) >= 0.5;
  const running = loop.units.filter((other) => other !== unitIndex && runs(other));
  return running.length >= loop.unitsNeeded;
}

/**
 * A stop that is only inferred from the feedback of the pumps: was it meant? Null: not known, as where nothing is heard of the standby
 * pump, which may carry the loop. True wherever a mode point says so.
 */
export const stopWasMeant = (context: UnitContext): boolean | null => {
  if (context.modeTold) return true;
  const { plant, slots, state, unitIndex } = context;
  const standby = usable(state, slots.pumpStandbyRunning);
  if (standby >= 0.5) return false;
  if (Number.isNaN(standby) && slots.pumpStandbyRunning >= 0) return null;
  const wanted = plant.runs.standbyWasLast[unitIndex] === 1 ? loopWanted(context) : pumpWanted(context);
  return wanted === null ? null : !wanted;
};
