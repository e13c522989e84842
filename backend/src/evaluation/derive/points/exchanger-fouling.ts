import {
  cleanConductance,
  cleanliness,
  equalShares,
  foulingFactor,
  foulingResistance,
} from '@ebbline/shared/heat/conductance';
import { fittedRelativeU } from '@ebbline/shared/heat/fit-conductance';
import { combine2, combine3, rectangular } from '@ebbline/shared/uncertainty/combine';
import { reasonBit } from '../../slots/quality-reasons';
import { areaHalfWidth, commissionedHalfWidth, resistanceFloorShare } from '../derive-constants';
import { hasExchanger } from '../exchanger';
import { fittedPart, fittedPartOf, writeFitted } from '../few-observations';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';

export const hasCleanConductance = (plan: UnitPlan): boolean => {
  const { uaWPerK, uaLoopMassFlowKgPerS, uaFacilityMassFlowKgPerS } = plan.unit.design.commissioned;
  const metered = plan.slot['facility.flow'] >= 0 && plan.slot['loop.flow'] >= 0;
  return (
    hasExchanger(plan) &&
    metered &&
    uaWPerK !== null &&
    uaLoopMassFlowKgPerS !== null &&
    uaFacilityMassFlowKgPerS !== null
  );
};

export const hasFoulingFactor = (plan: UnitPlan): boolean =>
  hasCleanConductance(plan) && plan.unit.design.commissioned.uaAreaM2 !== null;

/**
 * UA now, UA of the clean exchanger at the flows of now, and how sure both are, relative: by what the records state, and by what they
 * scatter beyond that. Written in place.
 */
const now = { ua: Number.NaN, clean: Number.NaN, cleanU: Number.NaN, excessU: 0, degrees: Infinity };

/** Takes UA and both flows; says nothing below 30 % of a commissioned flow. */
function takeBoth(frame: UnitFrame): typeof now {
  const { tally, state, plan } = frame;
  const { slot } = plan;
  const { commissioned } = plan.unit.design;
  tally.begin();
  now.ua = tally.take(state, slot.ua);
  const loopShare = tally.take(state, slot.massFlow) / (commissioned.uaLoopMassFlowKgPerS ?? Number.NaN);
  // A cubic metre of facility water is taken as a tonne here: half a per cent, once rated and once now.
  const facilityShare =
    (1000 * tally.take(state, slot['facility.flow'])) / (commissioned.uaFacilityMassFlowKgPerS ?? Number.NaN);
  if (Math.min(loopShare, facilityShare) < resistanceFloorShare) tally.note(reasonBit.undefined, Infinity);
  const { uaFit, uaExponent, uaWPerK } = commissioned;
  now.clean = cleanConductance(
    uaWPerK ?? Number.NaN,
    loopShare,
    facilityShare,
    uaExponent,
    uaFit?.shares ?? equalShares,
  );
  now.cleanU =
    uaFit === null ? rectangular(commissionedHalfWidth) : fittedRelativeU(uaFit, loopShare, facilityShare, uaExponent);
  now.excessU = now.cleanU * Math.sqrt(uaFit?.excessVariance ?? 0);
  now.degrees = now.excessU > 0 ? (uaFit?.degreesOfFreedom ?? Infinity) : Infinity;
  return now;
}

const clean = 'commissioning.exchanger.ua';
const scatter = 'scatter of the commissioning records';

/** What both bring to a figure that moves by so much with a share of UA, and with a share of the clean UA. */
const partsOfBoth = (frame: UnitFrame, both: typeof now, byUa: number, byClean: number): number =>
  combine3(
    fittedPartOf(frame, frame.plan.slot.ua, byUa / both.ua),
    part(frame, clean, byClean * both.cleanU),
    // Nothing where the records do not scatter more than they state.
    both.excessU === 0 ? 0 : fittedPart(frame, scatter, byClean * both.excessU, both.degrees),
  );

/** UA over that of the clean exchanger at the same two flows. */
export function deriveUaRatio(frame: UnitFrame): void {
  const both = takeBoth(frame);
  const value = cleanliness(both.ua, both.clean);
  writeFitted(frame, frame.plan.slot.uaRatio, value, partsOfBoth(frame, both, value, value));
}

/** What dirt adds to the exchanger's resistance, K/W; below 0 within its uncertainty where it is clean. */
export function deriveFoulingResistance(frame: UnitFrame): void {
  const both = takeBoth(frame);
  const u = partsOfBoth(frame, both, 1 / both.ua, 1 / both.clean);
  writeFitted(frame, frame.plan.slot.foulingResistance, foulingResistance(both.ua, both.clean), u);
}

/** The same of one square metre of its plates, m²K/W. */
export function deriveFoulingFactor(frame: UnitFrame): void {
  const both = takeBoth(frame);
  const area = frame.plan.unit.design.commissioned.uaAreaM2 ?? Number.NaN;
  const value = foulingFactor(both.ua, both.clean, area);
  const u = combine2(
    partsOfBoth(frame, both, area / both.ua, area / both.clean),
    part(frame, 'commissioning.exchanger.area', Math.abs(value) * rectangular(areaHalfWidth)),
  );
  writeFitted(frame, frame.plan.slot.foulingFactor, value, u);
}
