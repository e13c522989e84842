import { tankVolume } from '@ebbline/shared/hydraulics/tank-water';
import { volumeOfTanks } from '../sample-memory';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { partOf, writePoint } from '../write-point';
import { hasSeparatorRate } from './tank-rates';

/** Each tank that the plant shape has needs a level and an area: a sum with a part missing is none. Shape c has no supply tank. */
export function hasWaterVolume(plan: UnitPlan): boolean {
  const { shape, design } = plan.unit;
  const supply = plan.slot['supplyTank.level'] >= 0 && design.supplyTankAreaM2 !== null;
  if (shape === 'b') return plan.tankVolumes.length > 0 || (supply && hasSeparatorRate(plan));
  return hasSeparatorRate(plan) && (shape === 'c' || supply);
}

/** Water in the unit's tanks above their zeros, m³. */
export function deriveWaterVolume(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { slot, unit } = plan;
  tally.begin();
  let value = volumeOfTanks(frame);
  let squares = 0;
  const add = (levelSlot: number, areaM2: number | null): void => {
    if (levelSlot < 0 || areaM2 === null) return;
    value += tankVolume(areaM2, tally.take(state, levelSlot));
    squares += partOf(frame, levelSlot, areaM2) ** 2;
  };
  if (unit.shape !== 'c') add(slot['supplyTank.level'], unit.design.supplyTankAreaM2);
  add(slot['separator.level'], unit.design.separatorAreaM2);
  for (const tank of plan.tankVolumes) squares += partOf(frame, tank.slot, tank.areaM2) ** 2;
  writePoint(frame, slot.waterVolume, value, Math.sqrt(squares));
}

/** Water in the tanks of all units on the loop: what only walks from one to another leaves it as it is. */
export function deriveLoopWaterVolume(frame: UnitFrame): void {
  deriveSum(frame, frame.plan.slot.loopWaterVolume, frame.plan.loopVolumeSlots);
}

/** Water that those tanks gain together, m³/s. */
export function deriveLoopWaterRate(frame: UnitFrame): void {
  deriveSum(frame, frame.plan.slot.loopWaterRate, frame.plan.loopRateSlots);
}

/** Units of a loop are stepped within one second, so another unit's value is at most one second older. */
function deriveSum(frame: UnitFrame, target: number, slots: readonly number[]): void {
  const { tally, state } = frame;
  tally.begin();
  let sum = 0;
  let squares = 0;
  for (const slot of slots) {
    sum += tally.take(state, slot);
    squares += partOf(frame, slot, 1) ** 2;
  }
  writePoint(frame, target, sum, Math.sqrt(squares));
}
