import { alternatingTankGas } from '@ebbline/shared/hydraulics/alternating-tank-gas';
import { freeAirOfThroughput } from '@ebbline/shared/hydraulics/free-air';
import type { UnitFrame } from './unit-frame';

/**
 * Gas that alternating tanks make by working, as free air; 0 for the other plant shapes. Rests on loop flow and both
 * anchors' pressures, which `takeOwnGas` takes.
 */
export function ownGas(frame: UnitFrame): number {
  if (frame.plan.unit.shape !== 'b') return 0;
  const throughput = alternatingTankGas(frame.flow, frame.supplyAnchorPressure, frame.separatorPressure);
  return freeAirOfThroughput(throughput, frame.returnTemperature);
}

export function takeOwnGas(frame: UnitFrame): void {
  const { plan, tally, state } = frame;
  if (plan.unit.shape !== 'b') return;
  tally.take(state, plan.slot['loop.flow']);
  tally.take(state, plan.supplyAnchor?.slot ?? -1);
  tally.take(state, plan.slot['separator.pressure']);
}

/** Gas that no one has to look for: commissioned baseline, tanks' own gas, open permits, and the budget of the last fill unless left out. */
export function gasAllowed(frame: UnitFrame, withoutBudget: boolean): number {
  const { plan, memory } = frame;
  const baseline = plan.unit.design.commissioned.gasLoadM3PerS ?? Number.NaN;
  if (memory === null) return baseline + ownGas(frame);
  const { gas } = memory;
  const permits = gas.permitM3PerS[plan.unitIndex] as number;
  return baseline + ownGas(frame) + permits + (withoutBudget ? 0 : gas.budgetRate(plan.unitIndex));
}
