import type { BandWord } from '@ebbline/shared/contract/water-quality';
import type { WaterParameterId } from '@ebbline/shared/contract/water-parameters';
import type { CompiledUnit } from '../site/compiled-site';
import type { CompiledWaterParameter, WaterBand } from '../site/compiled-water';
import { badBits, reasonBit } from '../slots/quality-reasons';
import type { SlotState } from '../slots/slot-state';
import { usable } from './judge-context';

/** Null where the unit neither measures it nor has it typed. */
export function waterParameterOf({ water }: CompiledUnit, id: WaterParameterId): CompiledWaterParameter | null {
  for (const parameter of water.parameters) if (parameter.id === id) return parameter;
  return null;
}

/** The point that counts: the sensor's while it is not bad, else what a person typed, where somebody has; −1 = none. */
export function slotInForce(state: SlotState, { sensorSlot, handSlot }: CompiledWaterParameter): number {
  const sensorIsBad = sensorSlot < 0 || ((state.reasons[sensorSlot] ?? 0) & badBits) !== 0;
  if (!sensorIsBad) return sensorSlot;
  const isTyped = handSlot >= 0 && ((state.reasons[handSlot] ?? badBits) & badBits) === 0;
  return isTyped || sensorSlot < 0 ? handSlot : sensorSlot;
}

/** Neither a sensor nor a person has told it yet. */
export function isUnheard(state: SlotState, parameter: CompiledWaterParameter): boolean {
  const slot = slotInForce(state, parameter);
  return slot < 0 || ((state.reasons[slot] ?? 0) & reasonBit.notReceived) !== 0;
}

/** What counts of one parameter, in its unit of measure; NaN where there is nothing. */
export function waterValue(state: SlotState, unit: CompiledUnit, id: WaterParameterId): number {
  const parameter = waterParameterOf(unit, id);
  return parameter === null ? Number.NaN : usable(state, slotInForce(state, parameter));
}

/** Where a value stands in a band; its ends belong to it. */
export function bandWord(value: number, { lowLow, low, high, highHigh }: WaterBand): BandWord {
  if ([lowLow, low, high, highHigh].every(Number.isNaN)) return 'noBand';
  if (Number.isNaN(value)) return 'unknown';
  if (value < lowLow) return 'lowLow';
  if (value < low) return 'low';
  if (value > highHigh) return 'highHigh';
  return value > high ? 'high' : 'inBand';
}

/** Nobody has typed a value yet, or the newest is older than its interval. False where no interval is stated. */
export function isOverdue(state: SlotState, { handSlot, dueMs }: CompiledWaterParameter): boolean {
  if (handSlot < 0 || Number.isNaN(dueMs)) return false;
  return ((state.reasons[handSlot] ?? 0) & (reasonBit.overdue | reasonBit.notReceived)) !== 0;
}
