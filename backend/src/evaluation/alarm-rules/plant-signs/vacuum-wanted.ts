import type { Mode } from '@ebbline/shared/contract/http-api';
import { usable, type UnitContext } from '../judge-context';
import { mayRest } from './may-rest';
import { powerLost } from './power-lost';

/** Modes in which nobody wants a vacuum. A stopped loop keeps it. */
export const withoutVacuum: readonly Mode[] = ['off', 'vented', 'tightnessTest', 'draining'];

/** A source that rests although the separator has risen so far has failed to start: the usual step to the standby, Pa. */
export const restTooLongPa = 4000;

/**
 * Is the vacuum source meant to run? Its command says so. Without one, a source that is started and stopped rests between its
 * cycles: that is no trip, unless the separator pressure has risen by `restTooLongPa` above its set point, or since the stop. So is one
 * of which the site file does not say how it is held. One held by speed, or at constant speed with a bleed, is meant to run in
 * every mode that wants a vacuum. Where the mode is only inferred and says off, the feedback itself made it so: then only a failure
 * of power tells. Null: not known, as after a restart, when nobody saw how the source came to stand.
 */
export function vacuumWanted(context: UnitContext): boolean | null {
  const { slots, state } = context;
  const command = usable(state, slots.vacuumCommand);
  if (!Number.isNaN(command)) return command >= 0.5;
  if (slots.vacuumCommand >= 0) return null;
  if (context.modeTold && withoutVacuum.includes(context.mode)) return false;
  if (powerLost(context)) return true;
  if (!context.modeTold && context.modeKnown && context.mode === 'off') return null;
  return mayRest(context) ? restsTooLong(context) : true;
}

function restsTooLong({ plant, slots, state, unitIndex }: UnitContext): boolean | null {
  const setPoint = usable(state, slots.separatorSetPoint);
  const from = Number.isNaN(setPoint) ? (plant.runs.pressureAtStop[unitIndex] as number) : setPoint;
  const risen = usable(state, slots.separatorPressure) - from;
  if (risen > restTooLongPa) return true;
  return Number.isNaN(risen) || Number.isNaN(plant.runs.vacuumStoppedMs[unitIndex]) ? null : false;
}
