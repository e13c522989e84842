import { liquidWaterDensity, liquidWaterHeatCapacity } from '@ebbline/shared/fluid-properties/liquid-water';
import { heatRate, heatRateUncertainty } from '@ebbline/shared/heat/heat-rate';
import { massFlow } from '@ebbline/shared/heat/mass-flow';
import { expanded } from '@ebbline/shared/uncertainty/combine';
import { celsius, cubicMetrePerSecond } from '@ebbline/shared/units/quantity';
import { heatCapacityRelativeU } from '../derive-constants';
import { standardUncertainty } from '../standard-uncertainty';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

/**
 * Heat that leaves in the loop's water, W. The two temperatures count as independent: no record of a common calibration.
 * What returns now left a transit time ago (loop volume between the sensors ÷ flow: 48 s in a loop of 490 L at 346 L/min), so it is
 * held against the supply temperature of then, where the site file states that volume and the past is known; else against that of now.
 */
export function deriveHeatRemoved(frame: UnitFrame): void {
  const { slot } = frame.plan;
  deriveHeat(frame, slot.heatRemoved, slot['loop.flow'], slot['return.temperature'], -1, supplyThen(frame));
}

/** Supply temperature at which the water that returns now set out; NaN where that is not known. */
function supplyThen({ memory, plan, flow }: UnitFrame): number {
  const volume = plan.unit.design.volumes.supplyToReturnM3;
  if (memory === null || volume === null || !(flow > 0)) return Number.NaN;
  return memory.transit.at(plan.unitIndex, volume / flow);
}

/** The same for each branch that has a flow and a return temperature, against the unit's supply temperature as it reads now. */
export function deriveBranchHeat(frame: UnitFrame): void {
  const { branches } = frame.plan.unit;
  for (let i = 0; i < branches.length; i++) {
    const branch = branches[i];
    const target = frame.plan.branchHeatSlot[i] ?? -1;
    if (branch !== undefined && target >= 0)
      deriveHeat(frame, target, branch.slot.flow, branch.slot.returnTemperature, branch.place, Number.NaN);
  }
}

/** A branch's meter is taken to sit on the same side as the loop's (`flowMeterSide`). */
function deriveHeat(
  frame: UnitFrame,
  target: number,
  flowSlot: number,
  returnSlot: number,
  where: number,
  supplyThen: number,
): void {
  const { tally, state, plan, site } = frame;
  const supplySlot = plan.slot['supply.temperature'];
  tally.begin();
  const flow = cubicMetrePerSecond(tally.take(state, flowSlot));
  const supplyNow = tally.take(state, supplySlot);
  const supply = celsius(Number.isNaN(supplyThen) ? supplyNow : supplyThen);
  const returned = celsius(tally.take(state, returnSlot));
  const density = plan.unit.flowMeterSide === 'return' ? liquidWaterDensity(returned) : frame.supplyDensity;
  const heatCapacity = liquidWaterHeatCapacity(celsius((supply + returned) / 2));
  const flowMass = massFlow(density, flow);
  const u = heatRateUncertainty(
    flowMass,
    density * standardUncertainty(site.slots, state, flowSlot),
    heatCapacity,
    heatCapacity * heatCapacityRelativeU,
    returned - supply,
    standardUncertainty(site.slots, state, supplySlot),
    standardUncertainty(site.slots, state, returnSlot),
  );
  writeDerived(
    state,
    target,
    frame.nowMs,
    tally,
    heatRate(flowMass, heatCapacity, supply, returned),
    expanded(u),
    where,
  );
}
