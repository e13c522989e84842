import { usable, type UnitContext } from '../judge-context';
import { isStartStop } from './may-rest';

/** Feedbacks of one power failure fall within so many ms of each other: one telegram, or two. Own rule. */
const togetherMs = 3000;

/** A unit that draws less has no power, W: control boards hang on the same feed. Own rule. */
const noPowerW = 10;

/**
 * Power failure of the unit with its gateway alive: pump and vacuum source stopped within the same few seconds, and neither
 * they nor a standby have come back. One event, whatever else follows from it. False where one of the two feedbacks is not
 * known: then the trip of one machine can't be told from it; where one of them is ordered to stand; and where the source is one
 * that rests between its cycles, unless its command or the unit's own power shows that it does not rest now.
 */
export function powerLost(context: Pick<UnitContext, 'plant' | 'slots' | 'state' | 'unit' | 'unitIndex'>): boolean {
  const { plant, slots, state, unitIndex } = context;
  if (noPowerAtMeter(context)) return true;
  const between = (plant.runs.pumpStoppedMs[unitIndex] as number) - (plant.runs.vacuumStoppedMs[unitIndex] as number);
  if (!(Math.abs(between) <= togetherMs)) return false;
  if (usable(state, slots.pumpStandbyRunning) >= 0.5 || usable(state, slots.vacuumStandbyRunning) >= 0.5) return false;
  const vacuumOrdered = usable(state, slots.vacuumCommand);
  if (usable(state, slots.pumpCommand) < 0.5 || vacuumOrdered < 0.5) return false;
  return !isStartStop(context) || vacuumOrdered >= 0.5 || usable(state, slots.unitPower) < noPowerW;
}

/**
 * A source that rested when the power failed is not seen to stop. The unit's own power tells of it then: nothing is drawn, the pump
 * was seen to stop although it is ordered to run, and no machine runs that a dead meter would not feel.
 */
function noPowerAtMeter({ plant, slots, state, unitIndex }: Parameters<typeof powerLost>[0]): boolean {
  if (!(usable(state, slots.unitPower) < noPowerW) || !(usable(state, slots.pumpCommand) >= 0.5)) return false;
  if (Number.isNaN(plant.runs.pumpStoppedMs[unitIndex]) || !(usable(state, slots.vacuumRunning) < 0.5)) return false;
  return !(usable(state, slots.pumpStandbyRunning) >= 0.5 || usable(state, slots.vacuumStandbyRunning) >= 0.5);
}

/** What a return of power may take: the tank is filled, the loop opens, flow comes. What is missing later has a cause of its own. Own rule. */
const returnMs = 60_000;

/** Power is lost, or came back so short a time ago that what stands is of the same event. */
export const inPowerEvent = ({ plant, unitIndex }: Pick<UnitContext, 'plant' | 'unitIndex'>): boolean =>
  !Number.isNaN(plant.runs.powerLostMs[unitIndex]);

/** Once a second: true where the event has just ended, so that what is left of it has to be looked at again. */
export function powerEventEnds({ nowMs, plant, unitIndex }: UnitContext): boolean {
  const { powerLostMs } = plant.runs;
  if (!(nowMs - (powerLostMs[unitIndex] as number) > returnMs)) return false;
  powerLostMs[unitIndex] = Number.NaN;
  return true;
}

export const powerLostText =
  'Pump and vacuum source stopped together: power of the unit lost. One event; the rest follows from it.';
