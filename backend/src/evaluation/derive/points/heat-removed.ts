import { heatRate } from '@ebbline/shared/heat/heat-rate';
import { massFlow } from '@ebbline/shared/heat/mass-flow';
import { combine2, expanded } from '@ebbline/shared/uncertainty/combine';
import { celsius, cubicMetrePerSecond } from '@ebbline/shared/units/quantity';
import { reasonBit } from '../../slots/quality-reasons';
import { heatParts } from '../heat-parts';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import { writeDerived } from '../write-derived';

/** What a heat is worked out from besides its meters; NaN = as it reads now. */
interface Then {
  supplyC: number;
  supplyU: number;
  flowM3PerS: number;
}

const then: Then = { supplyC: Number.NaN, supplyU: 0, flowM3PerS: Number.NaN };

/**
 * Heat that the water which returns now took up at the plates, W: with the supply temperature with which it set out and the flow
 * with which it passed the plates, a transit ago (48 s in a loop of 490 L at 346 L/min). So a change of supply temperature
 * or of flow on the way is no heat. Where the site file does not state the volume between the sensors, by what reads now.
 */
export function deriveHeatRemoved(frame: UnitFrame): void {
  const { plan, transit } = frame;
  const { slot } = plan;
  const aligned = plan.transit !== null && frame.memory !== null && !transit.standing;
  then.supplyC = aligned ? transit.supplyC : Number.NaN;
  then.supplyU = aligned ? transit.supplyU : 0;
  then.flowM3PerS = aligned ? transit.flowM3PerS : Number.NaN;
  frame.tally.begin();
  if (aligned && !transit.known) frame.tally.note(reasonBit.warming, Infinity);
  deriveHeat(frame, slot.heatRemoved, slot['loop.flow'], slot['return.temperature'], -1);
}

/** The same for each branch that has a flow and a return temperature, against the supply temperature that its water set out with. */
export function deriveBranchHeat(frame: UnitFrame): void {
  const { transit } = frame;
  const { branches } = frame.plan.unit;
  then.supplyC = transit.known ? transit.atPlatesC : Number.NaN;
  then.supplyU = transit.known ? transit.supplyU : 0;
  then.flowM3PerS = Number.NaN;
  for (let i = 0; i < branches.length; i++) {
    const branch = branches[i];
    const target = frame.plan.branchHeatSlot[i] ?? -1;
    if (branch === undefined || target < 0) continue;
    frame.tally.begin();
    deriveHeat(frame, target, branch.slot.flow, branch.slot.returnTemperature, branch.place);
  }
}

/** A branch's meter is taken to sit on the same side as the loop's (`flowMeterSide`). */
function deriveHeat(frame: UnitFrame, target: number, flowSlot: number, returnSlot: number, where: number): void {
  const { tally, state, plan } = frame;
  const supplySlot = plan.slot['supply.temperature'];
  const flowNow = tally.take(state, flowSlot);
  const supplyNow = tally.take(state, supplySlot);
  const flow = cubicMetrePerSecond(Number.isNaN(then.flowM3PerS) ? flowNow : then.flowM3PerS);
  const supply = celsius(Number.isNaN(then.supplyC) ? supplyNow : then.supplyC);
  const returned = celsius(tally.take(state, returnSlot));
  const density = plan.unit.flowMeterSide === 'return' ? plan.fluid.density(returned) : frame.supplyDensity;
  const heatCapacity = plan.fluid.heatCapacity(celsius((supply + returned) / 2));
  const flowMass = massFlow(density, flow);
  const slots = { flow: flowSlot, supply: supplySlot, returned: returnSlot };
  const u = heatParts(
    frame,
    slots,
    { fluid: plan.fluid, density, massFlow: flowMass, heatCapacity },
    returned - supply,
  );
  const ofTransit = part(frame, 'volumes.supplyToReturn', flowMass * heatCapacity * then.supplyU);
  const value = heatRate(flowMass, heatCapacity, supply, returned);
  writeDerived(state, target, frame.nowMs, tally, value, expanded(combine2(u, ofTransit)), where);
}
