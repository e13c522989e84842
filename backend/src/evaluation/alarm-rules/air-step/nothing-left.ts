import type { Limits } from '../entry';
import { usable, type UnitContext } from '../judge-context';
import { inPowerEvent, powerLost } from '../plant-signs/power-lost';
import { vacuumWanted, withoutVacuum } from '../plant-signs/vacuum-wanted';
import { stepBefore, stepOf } from '../step';
import { gasThatCollects } from './gas-that-collects';

/** A source counts as full from this share of its speed on, and a reserve as none below this share of a source's capacity. */
export const fullShare = 0.97;
/** So much more comes in through a line that is open than through any sound loop, m³/s of free air: as AIR-1 counts it. */
const openingM3PerS = 20 / 60_000;

/**
 * The lead source stands, and no standby is known to wait: has the unit nothing left for what comes in? Null where that is not known.
 * Nobody misses a source that stands in a mode without a vacuum, that is ordered to rest, or that has gone with the power of the unit.
 * A standby that runs, or may run unseen, has its whole capacity; without any source a line that is open is more than is carried, and
 * the small leak of a sound loop is for VSRC-1 to tell. Once so, it stays so while the pressure does not fall.
 */
export function nothingLeft(context: UnitContext, signal: number, limits: Limits, active: boolean): boolean | null {
  const { slots, state, unit } = context;
  const standby = usable(state, slots.vacuumStandbyRunning);
  if (context.modeTold && withoutVacuum.includes(context.mode)) return false;
  if (slots.vacuumStandbyRunning >= 0 && Number.isNaN(standby)) return null;
  if (!(standby >= 0.5)) {
    if (inPowerEvent(context) || powerLost(context)) return false;
    // Alternating tanks bring gas of their own into the separator as long as water flows: without a source it rises, and nothing is open.
    if (unit.shape === 'b') return false;
    const wanted = vacuumWanted(context);
    // A command that is lost neither raises nor clears.
    if (wanted !== true) return wanted ?? (slots.vacuumCommand >= 0 ? null : false);
  }
  return active || (standby >= 0.5 || mayRunUnseen(context) ? beyondOne : openWithoutAny)(context, signal, limits);
}

/** A unit of several sources that does not tell whether the standby runs, nor that there is none to start. */
const mayRunUnseen = ({ slots, state, unit }: UnitContext): boolean =>
  slots.vacuumStandbyRunning < 0 &&
  (unit.vacuumSource?.count ?? 1) > 1 &&
  !(usable(state, slots.vacuumAvailable) < 0.5);

function beyondOne(context: UnitContext, signal: number, limits: Limits): boolean {
  const { slots, state } = context;
  const capacity = usable(state, slots.vacuumCapacity);
  const coming = gasThatComes(context);
  return Number.isNaN(coming)
    ? gasThatCollects(context, stepOf(context.air.rings, signal)) > capacity || goesOnRising(context, signal, limits)
    : coming >= fullShare * capacity;
}

function openWithoutAny(context: UnitContext, signal: number, limits: Limits): boolean {
  const coming = gasThatComes(context);
  return Number.isNaN(coming) ? goesOnRising(context, signal, limits) : coming > openingM3PerS;
}

/** All gas that comes in, with what collects: what one source has less what is left of it. NaN where that, or the room of the gas, is not known. */
function gasThatComes({ slots, state, unit }: UnitContext): number {
  if (unit.design.volumes.separatorGasM3 === null) return Number.NaN;
  return usable(state, slots.vacuumCapacity) - usable(state, slots.vacuumReserve);
}

/** For twice the length of a step: longer than a source that is called takes to run up, than water that sloshes and than a change-over. */
export const goesOnRising = ({ air: { rings } }: UnitContext, signal: number, { limit }: Limits): boolean =>
  stepBefore(rings, signal) > limit && stepOf(rings, signal) > limit;
