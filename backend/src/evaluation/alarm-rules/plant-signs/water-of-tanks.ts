import type { CompiledUnit } from '../../site/compiled-site';
import { usable, type UnitContext } from '../judge-context';
import type { UnitSlots } from '../unit-slots';
import { transfersToLearn } from './transfer-memory';

/** Alternating tanks whose levels and change-overs are known. */
export const knowsWaterOfTanks = ({ shape }: CompiledUnit, { tankFilling, waterVolume }: UnitSlots): boolean =>
  shape === 'b' && waterVolume >= 0 && tankFilling.some((slot) => slot >= 0);

/**
 * Water that alternating tanks hold together beyond what is usual at their change-overs, m³, less than 0 where some is missing; NaN where
 * that is not known. Each litre too much or too little is one that a transfer no longer carries: the filling tank is full, or the
 * discharging one empty, sooner.
 */
export function beyondUsualM3({ plant: { transfers }, slots, state, unitIndex }: UnitContext): number {
  if ((transfers.seen[unitIndex] as number) < transfersToLearn) return Number.NaN;
  return usable(state, slots.waterVolume) - (transfers.usualHeld[unitIndex] as number);
}

/** Water that a usual transfer carries, m³; NaN before it is known. */
export const usualTransferM3 = ({ plant: { transfers }, unitIndex }: UnitContext): number =>
  transfers.usualWater[unitIndex] as number;
