import { combine2, combine3, coverageFactor, differenceUncertainty } from '@ebbline/shared/uncertainty/combine';
import { celsius } from '@ebbline/shared/units/quantity';
import { badBits, reasonBit } from '../slots/quality-reasons';
import { correlationOf } from './correlation';
import type { Exchanger } from './exchanger-state';
import type { PlainPoint } from './plan-points';
import { isSmall } from './small';
import { standingShare } from './transit-now';
import type { UnitFrame } from './unit-frame';
import type { UnitPlan } from './unit-plan';
import { uOf } from './write-point';

export const hasTerminals = ({ slot }: UnitPlan): boolean =>
  slot['supply.temperature'] >= 0 &&
  slot['return.temperature'] >= 0 &&
  slot['facility.supply.temperature'] >= 0 &&
  slot['facility.return.temperature'] >= 0;

export const hasExchanger = (plan: UnitPlan): boolean => hasTerminals(plan) && plan.slot['loop.flow'] >= 0;

/** Takes the four temperatures. A terminal difference within its uncertainty makes no figure. */
export function takeTerminals(frame: UnitFrame, into: Exchanger): void {
  const { tally, state, plan } = frame;
  const { slot } = plan;
  const facilityIn = tally.take(state, slot['facility.supply.temperature']);
  const facilityOut = tally.take(state, slot['facility.return.temperature']);
  takeLoopSide(frame, into);
  into.warmEnd = into.loopInC - facilityOut;
  into.coldEnd = into.loopOutC - facilityIn;
  into.warmEndU = combine3(
    uOf(frame, slot['return.temperature']),
    uOf(frame, slot['facility.return.temperature']),
    into.loopInWayU,
  );
  into.coldEndU = combine3(
    uOf(frame, slot['supply.temperature']),
    uOf(frame, slot['facility.supply.temperature']),
    into.loopOutWayU,
  );
  const near = isSmall(into.warmEnd, into.warmEndU) || isSmall(into.coldEnd, into.coldEndU);
  if (near && !tally.isBad()) tally.note(reasonBit.undefined, Infinity);
  // Water in counterflow does not cross: beyond its uncertainty that is a sensor's fault, and no dirt.
  if ((into.warmEnd < 0 || into.coldEnd < 0) && !tally.isBad()) tally.note(reasonBit.contradicted, Infinity);
}

/**
 * Loop water as it comes into and leaves the exchanger now: through the unit's tanks, in which a front that has returned is on its way for
 * a minute. By what reads now a load step would move UA by tens of per cent. While the tanks were not watched long enough: warming.
 */
function takeLoopSide({ tally, state, plan, memory, transit }: UnitFrame, into: Exchanger): void {
  const returned = tally.take(state, plan.slot['return.temperature']);
  const supply = tally.take(state, plan.slot['supply.temperature']);
  const aligned = transit.known && !Number.isNaN(transit.exchangerInC);
  into.loopInC = aligned ? transit.exchangerInC : returned;
  into.loopOutC = aligned ? transit.exchangerOutC : supply;
  into.loopInWayU = aligned ? transit.exchangerInU : 0;
  into.loopOutWayU = aligned ? transit.exchangerOutU : 0;
  const throughTanks = memory !== null && plan.transit !== null && plan.transit.throughUnit !== null;
  if (throughTanks && !aligned && !transit.standing && !tally.isBad()) tally.note(reasonBit.warming, Infinity);
}

/** Both sides as they are this second, with what they rest on in the frame's tally; worked out for the first who asks. */
export function exchangerNow(frame: UnitFrame): Exchanger {
  const { tally, exchanger, exchangerTally } = frame;
  tally.begin();
  if (!frame.exchangerKnown) {
    takeExchanger(frame, exchanger);
    if (stands(frame, exchanger) && !tally.isBad()) tally.note(reasonBit.undefined, Infinity);
    if (moreThanPossible(frame, exchanger) && !tally.isBad()) tally.note(reasonBit.contradicted, Infinity);
    exchangerTally.reasons = tally.reasons;
    exchangerTally.oldestMs = tally.oldestMs;
    frame.exchangerKnown = true;
  } else tally.note(exchangerTally.reasons, exchangerTally.oldestMs);
  return exchanger;
}

/** Water of one side stands: what goes over then is no figure of an exchanger in counterflow. */
const stands = ({ transit }: UnitFrame, { loopRate, facilityRate }: Exchanger): boolean =>
  transit.standing || facilityRate < standingShare * loopRate;

/** More heat than the cooler water could take up at all (effectiveness above 1): a meter is wrong. */
function moreThanPossible(frame: UnitFrame, exchanger: Exchanger): boolean {
  const { heat, loopRate, facilityRate } = exchanger;
  return heat > Math.min(loopRate, facilityRate) * inletDifference(frame, exchanger);
}

/** Loop water in minus facility water in, K. */
export const inletDifference = ({ state, plan }: UnitFrame, { loopInC }: Exchanger): number =>
  loopInC - (state.value[plan.slot['facility.supply.temperature']] ?? Number.NaN);

/**
 * Takes heat and flows besides. Two sides that contradict each other by more than two standard uncertainties make no
 * exchanger figure: one of the meters is wrong. Facility water without a meter has the flow that the balance gives it.
 */
function takeExchanger(frame: UnitFrame, into: Exchanger): void {
  const { tally, state, plan } = frame;
  const { slot } = plan;
  takeTerminals(frame, into);
  const { loopHeat, loopU } = takeLoopHeat(frame, into);
  into.heat = loopHeat;
  into.heatU = loopU;
  into.loopHeat = loopHeat;
  into.loopWeight = 1;
  const facilityIn = celsius(state.value[slot['facility.supply.temperature']] ?? Number.NaN);
  const rise = (state.value[slot['facility.return.temperature']] ?? Number.NaN) - facilityIn;
  if (slot['facility.flow'] < 0) {
    const riseU = Math.hypot(
      uOf(frame, slot['facility.supply.temperature']),
      uOf(frame, slot['facility.return.temperature']),
    );
    if (isSmall(rise, riseU) && !tally.isBad()) tally.note(reasonBit.undefined, Infinity);
    into.facilityRate = loopHeat / rise;
    return;
  }
  into.facilityRate =
    tally.take(state, slot['facility.flow']) *
    plan.facilityFluid.density(facilityIn) *
    plan.facilityFluid.heatCapacity(facilityIn);
  const facilityHeat = tally.take(state, slot.facilityHeat);
  const facilityU = uOf(frame, slot.facilityHeat);
  into.facilityHeat = facilityHeat;
  into.facilityRestU = restU(
    frame,
    facilityHeat,
    facilityU,
    into.facilityRate,
    'facility.return.temperature',
    'facility.supply.temperature',
  );
  const z = state.value[slot.heatBalanceSignificance] ?? Number.NaN;
  const judged =
    slot.heatBalanceSignificance >= 0 && ((state.reasons[slot.heatBalanceSignificance] ?? 0) & badBits) === 0;
  if (judged && Math.abs(z) > coverageFactor && !tally.isBad()) tally.note(reasonBit.contradicted, Infinity);
  const weight = 1 / (loopU * loopU);
  const otherWeight = 1 / (facilityU * facilityU);
  if (!Number.isFinite(weight + otherWeight)) return;
  into.heat = (weight * loopHeat + otherWeight * facilityHeat) / (weight + otherWeight);
  into.heatU = 1 / Math.sqrt(weight + otherWeight);
  into.loopWeight = weight / (weight + otherWeight);
}

/** What the loop's water leaves in the exchanger: by its two ends where its way there is known, else what it took up in the racks. */
function takeLoopHeat(frame: UnitFrame, into: Exchanger): { loopHeat: number; loopU: number } {
  const { tally, state, plan, transit } = frame;
  const { slot } = plan;
  const removed = tally.take(state, slot.heatRemoved);
  const removedU = uOf(frame, slot.heatRemoved);
  const flowMass = tally.take(state, slot.massFlow);
  into.loopRate = flowMass * plan.fluid.heatCapacity(frame.supplyTemperature);
  if (!transit.known || Number.isNaN(transit.exchangerInC)) {
    into.loopRestU = restU(frame, removed, removedU, into.loopRate, 'return.temperature', 'supply.temperature');
    return { loopHeat: removed, loopU: removedU };
  }
  const loopHeat = into.loopRate * (into.loopInC - into.loopOutC);
  into.loopRestU = combine2(uOf(frame, slot.massFlow) / flowMass, plan.fluid.heatCapacityRelativeU);
  const shared = correlationOf(plan.unit.matchedPairs, slot['return.temperature'], slot['supply.temperature']);
  const ofPair = differenceUncertainty(
    uOf(frame, slot['return.temperature']),
    uOf(frame, slot['supply.temperature']),
    shared,
  );
  const ofWay = combine2(into.loopInWayU, into.loopOutWayU);
  return { loopHeat, loopU: combine2(loopHeat * into.loopRestU, into.loopRate * combine2(ofPair, ofWay)) };
}

/** Relative uncertainty of a heat rate without what its two thermometers bring: they are in the ends of the exchanger too. */
function restU(
  frame: UnitFrame,
  heat: number,
  heatU: number,
  rate: number,
  warm: PlainPoint,
  cold: PlainPoint,
): number {
  const { slot, unit } = frame.plan;
  const shared = correlationOf(unit.matchedPairs, slot[warm], slot[cold]);
  const ofPair = rate * differenceUncertainty(uOf(frame, slot[warm]), uOf(frame, slot[cold]), shared);
  return Math.sqrt(Math.max(0, heatU * heatU - ofPair * ofPair)) / Math.abs(heat);
}
