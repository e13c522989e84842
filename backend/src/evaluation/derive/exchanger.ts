import { coverageFactor, differenceUncertainty } from '@ebbline/shared/uncertainty/combine';
import { celsius } from '@ebbline/shared/units/quantity';
import { badBits, reasonBit } from '../slots/quality-reasons';
import { correlationOf } from './correlation';
import type { Exchanger } from './exchanger-state';
import type { PlainPoint } from './plan-points';
import { isSmall } from './small';
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
  into.warmEnd = tally.take(state, slot['return.temperature']) - facilityOut;
  into.coldEnd = tally.take(state, slot['supply.temperature']) - facilityIn;
  into.warmEndU = Math.hypot(uOf(frame, slot['return.temperature']), uOf(frame, slot['facility.return.temperature']));
  into.coldEndU = Math.hypot(uOf(frame, slot['supply.temperature']), uOf(frame, slot['facility.supply.temperature']));
  const near = isSmall(into.warmEnd, into.warmEndU) || isSmall(into.coldEnd, into.coldEndU);
  if (near && !tally.isBad()) tally.note(reasonBit.undefined, Infinity);
  // Water in counterflow does not cross: beyond its uncertainty that is a sensor's fault, and no dirt.
  if ((into.warmEnd < 0 || into.coldEnd < 0) && !tally.isBad()) tally.note(reasonBit.contradicted, Infinity);
}

/** Both sides as they are this second, with what they rest on in the frame's tally; worked out for the first who asks. */
export function exchangerNow(frame: UnitFrame): Exchanger {
  const { tally, exchanger, exchangerTally } = frame;
  tally.begin();
  if (!frame.exchangerKnown) {
    takeExchanger(frame, exchanger);
    if (moreThanPossible(frame, exchanger) && !tally.isBad()) tally.note(reasonBit.contradicted, Infinity);
    exchangerTally.reasons = tally.reasons;
    exchangerTally.oldestMs = tally.oldestMs;
    frame.exchangerKnown = true;
  } else tally.note(exchangerTally.reasons, exchangerTally.oldestMs);
  return exchanger;
}

/** More heat than the cooler water could take up at all (effectiveness above 1): a meter is wrong. */
function moreThanPossible({ state, plan, returnTemperature }: UnitFrame, { heat, loopRate, facilityRate }: Exchanger) {
  const inlets = returnTemperature - (state.value[plan.slot['facility.supply.temperature']] ?? Number.NaN);
  return heat > Math.min(loopRate, facilityRate) * inlets;
}

/**
 * Takes heat and flows besides. Two sides that contradict each other by more than two standard uncertainties make no
 * exchanger figure: one of the meters is wrong. Facility water without a meter has the flow that the balance gives it.
 */
function takeExchanger(frame: UnitFrame, into: Exchanger): void {
  const { tally, state, plan } = frame;
  const { slot } = plan;
  takeTerminals(frame, into);
  const loopHeat = tally.take(state, slot.heatRemoved);
  const loopU = uOf(frame, slot.heatRemoved);
  into.loopRate = tally.take(state, slot.massFlow) * plan.fluid.heatCapacity(frame.supplyTemperature);
  into.heat = loopHeat;
  into.heatU = loopU;
  into.loopHeat = loopHeat;
  into.loopWeight = 1;
  into.loopRestU = restU(frame, loopHeat, loopU, into.loopRate, 'return.temperature', 'supply.temperature');
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
