import { frictionFactor, frictionLoss, reynoldsNumber } from '@ebbline/shared/hydraulics/pipe-friction';
import { meanVelocity, velocityShare } from '@ebbline/shared/hydraulics/velocity';
import { combine2, expanded, rectangular } from '@ebbline/shared/uncertainty/combine';
import { celsius } from '@ebbline/shared/units/quantity';
import { reasonBit } from '../../slots/quality-reasons';
import { areaHalfWidth, shareFloor } from '../derive-constants';
import { permissibleAt } from '../pipe-plan';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { uOf, writePoint } from '../write-point';
import { writeDerived } from '../write-derived';

export const hasMainVelocity = ({ unit, slot }: UnitPlan): boolean =>
  slot['loop.flow'] >= 0 && unit.design.mains !== null;

export const hasMainVelocityShare = (plan: UnitPlan): boolean =>
  hasMainVelocity(plan) && plan.pipes.velocityLimit !== null && plan.slot['return.temperature'] >= 0;

export const hasMainFriction = (plan: UnitPlan): boolean =>
  hasMainVelocity(plan) &&
  (plan.unit.design.mains?.lengthM ?? null) !== null &&
  plan.slot['supply.temperature'] >= 0 &&
  plan.slot['return.temperature'] >= 0;

export const hasManifoldVelocity = ({ unit }: UnitPlan): boolean =>
  unit.branches.some(({ slot, manifoldAreaM2 }) => slot.flow >= 0 && manifoldAreaM2 !== undefined);

export const hasManifoldShare = (plan: UnitPlan): boolean =>
  hasManifoldVelocity(plan) && plan.pipes.velocityLimit !== null;

/** Relative contribution of a stated cross-section. */
const areaU = rectangular(areaHalfWidth);

/** Mean velocity in the mains, m/s. */
export function deriveMainVelocity(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  tally.begin();
  const flow = tally.take(state, plan.slot['loop.flow']);
  const area = plan.pipes.mainAreaM2;
  const value = meanVelocity(flow, area);
  const u = combine2(
    part(frame, 'loop.flow', uOf(frame, plan.slot['loop.flow']) / area),
    part(frame, 'mains.bore', value * areaU),
  );
  writePoint(frame, plan.slot.mainVelocity, value, u);
}

/** The same over what is permissible in the warmer main, the return. */
export function deriveMainVelocityShare(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  tally.begin();
  const velocity = tally.take(state, plan.slot.mainVelocity);
  const permissible = permissibleAt(
    plan.pipes.velocityLimit ?? Number.NaN,
    tally.take(state, plan.slot['return.temperature']),
  );
  const u = part(frame, 'mainVelocity', uOf(frame, plan.slot.mainVelocity) / permissible);
  writePoint(frame, plan.slot.mainVelocityShare, velocityShare(velocity, permissible), u);
}

/** Velocity in each rack manifold where all of its branch's water still runs together, m/s. */
export function deriveManifoldVelocity(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { branches } = plan.unit;
  for (let i = 0; i < branches.length; i += 1) {
    const branch = branches[i];
    const target = plan.pipes.manifoldVelocitySlot[i] ?? -1;
    if (branch === undefined || target < 0) continue;
    const area = branch.manifoldAreaM2;
    tally.begin();
    if (area === undefined) tally.note(reasonBit.notApplicable, Infinity);
    const value = meanVelocity(tally.take(state, branch.slot.flow), area ?? Number.NaN);
    const u = combine2(
      part(frame, 'branch.<id>.flow', uOf(frame, branch.slot.flow) / (area ?? Number.NaN)),
      part(frame, 'manifoldBore or manifoldArea', value * areaU),
    );
    writeDerived(state, target, frame.nowMs, tally, value, expanded(u), branch.place);
  }
}

/** The same over what is permissible in the warmer of the pair, the return manifold: at its own temperature, or else the unit's. */
export function deriveManifoldShare(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { branches } = plan.unit;
  for (let i = 0; i < branches.length; i += 1) {
    const branch = branches[i];
    const target = plan.pipes.manifoldShareSlot[i] ?? -1;
    const velocitySlot = plan.pipes.manifoldVelocitySlot[i] ?? -1;
    if (branch === undefined || target < 0) continue;
    const own = branch.slot.returnTemperature;
    tally.begin();
    const velocity = tally.take(state, velocitySlot);
    const permissible = permissibleAt(
      plan.pipes.velocityLimit ?? Number.NaN,
      tally.take(state, own >= 0 ? own : plan.slot['return.temperature']),
    );
    const u = part(frame, 'branch.<id>.manifoldVelocity', uOf(frame, velocitySlot) / permissible);
    writeDerived(state, target, frame.nowMs, tally, velocityShare(velocity, permissible), expanded(u), branch.place);
  }
}

/**
 * What the straight mains lose by friction at the present flow, Pa: bends, valves and branches come on top, so a commissioned loss
 * can not be less. Says nothing below a tenth of rated flow. Δp goes about with q^1.8 and A^−2.4.
 */
export function deriveMainFriction(frame: UnitFrame): void {
  const { tally, state, plan } = frame;
  const { mains, ratedFlowM3PerS } = plan.unit.design;
  const bore = mains?.boreM ?? Number.NaN;
  const flowSlot = plan.slot['loop.flow'];
  tally.begin();
  const flow = tally.take(state, flowSlot);
  const supply = tally.take(state, plan.slot['supply.temperature']);
  const mean = celsius((supply + tally.take(state, plan.slot['return.temperature'])) / 2);
  if (flow < shareFloor * ratedFlowM3PerS) tally.note(reasonBit.undefined, Infinity);
  const density = plan.fluid.density(mean);
  const velocity = meanVelocity(flow, plan.pipes.mainAreaM2);
  const factor = frictionFactor(
    reynoldsNumber(velocity, bore, density, plan.fluid.viscosity(mean)),
    (mains?.roughnessM ?? Number.NaN) / bore,
  );
  const value = frictionLoss(factor, mains?.lengthM ?? Number.NaN, bore, density, velocity);
  const u = combine2(
    part(frame, 'loop.flow', (1.8 * value * uOf(frame, flowSlot)) / flow),
    part(frame, 'mains.bore', 2.4 * value * areaU),
  );
  writePoint(frame, plan.slot.mainFrictionLoss, value, u);
}
