import { tankVolume } from '@ebbline/shared/hydraulics/tank-water';
import type { UnitFrame } from './unit-frame';
import type { UnitPlan } from './unit-plan';
import { partOf } from './write-point';
import { hasUsable, usableNow } from './points/times-of-tanks';

/** Shape b needs every tank's area, level, and which of them fills; shape a what its supply tank may give off. */
export function hasStoredWater(plan: UnitPlan): boolean {
  const { tankVolumes, unit } = plan;
  if (unit.shape !== 'b') return hasUsable(plan);
  return tankVolumes.length > 0 && tankVolumes.every(({ fillingSlot }) => fillingSlot >= 0);
}

/**
 * Water that flows on into the loop by itself, m³: of a supply tank what it may give off, of alternating tanks what stands in those
 * that discharge, down to the zero of their level. Takes its inputs.
 */
export function storedWater(frame: UnitFrame): number {
  const { plan, state, tally } = frame;
  if (plan.unit.shape !== 'b') return usableNow(frame);
  let sum = 0;
  for (const { areaM2, slot, fillingSlot } of plan.tankVolumes)
    if (tally.take(state, fillingSlot) === 0) sum += tankVolume(areaM2, Math.max(0, tally.take(state, slot)));
  return sum;
}

/** What the levels' uncertainty does to a value that moves by `sensitivity` with the stored water. */
export function storedWaterU(frame: UnitFrame, sensitivity: number): number {
  const { plan, state } = frame;
  if (plan.unit.shape !== 'b')
    return partOf(
      frame,
      plan.slot['supplyTank.level'],
      sensitivity * (plan.unit.design.supplyTankAreaM2 ?? Number.NaN),
    );
  let squares = 0;
  for (const { areaM2, slot, fillingSlot } of plan.tankVolumes)
    if (state.value[fillingSlot] === 0) squares += partOf(frame, slot, sensitivity * areaM2) ** 2;
  return Math.sqrt(squares);
}
