import { airThroughOpening } from '@ebbline/shared/hydraulics/air-through-opening';
import { freeAirOfMass } from '@ebbline/shared/hydraulics/free-air';
import { openHoseFlow } from '@ebbline/shared/hydraulics/open-hose';
import { largestOpeningCarried, openingsCarried } from '@ebbline/shared/hydraulics/vacuum-reserve';
import { combine2, rectangular } from '@ebbline/shared/uncertainty/combine';
import { pascalAbsolute } from '@ebbline/shared/units/quantity';
import { openingHalfWidth } from '../derive-constants';
import { fittedPartOf, writeFitted } from '../few-observations';
import { lossNow } from '../node-pressure';
import { roomTemperature } from '../room-temperature';
import { trapIsFull } from '../trap';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { hasVacuumCapacity } from './vacuum-capacity';

export const hasOpenings = (plan: UnitPlan): boolean => hasVacuumCapacity(plan) && plan.hose !== null;

/** How many open hoses of this site the reserve of one source still carries. */
export function deriveOpeningsCarried(frame: UnitFrame): void {
  deriveOpenings(frame, frame.plan.slot.openingsCarried, frame.plan.slot.vacuumReserve);
}

/** The same with all sources. */
export function deriveOpeningsCarriedAll(frame: UnitFrame): void {
  deriveOpenings(frame, frame.plan.slot.openingsCarriedAll, frame.plan.slot.vacuumReserveAll);
}

function deriveOpenings(frame: UnitFrame, target: number, reserveSlot: number): void {
  const { tally, state, ambient } = frame;
  tally.begin();
  tally.note(ambient.reasons, ambient.sourceMs);
  const reserve = tally.take(state, reserveSlot);
  const hose = flowOfOneHose(frame);
  // All sources leave a flooded one out already; of one source alone nothing is left to count on.
  const flooded = reserveSlot === frame.plan.slot.vacuumReserve && trapIsFull(frame);
  const value = flooded ? 0 : openingsCarried(reserve, hose);
  const u = combine2(
    fittedPartOf(frame, reserveSlot, 1 / hose),
    part(frame, 'openingDischargeCoefficient', value * rectangular(openingHalfWidth)),
  );
  writeFitted(frame, target, value, u);
}

/** Bore of the largest opening on the return side that one source still carries. */
export function deriveLargestOpening(frame: UnitFrame): void {
  const { tally, state, ambient, plan } = frame;
  const reserveSlot = plan.slot.vacuumReserve;
  tally.begin();
  tally.note(ambient.reasons, ambient.sourceMs);
  const reserve = tally.take(state, reserveSlot);
  const perArea = freeAirOfMass(
    airThroughOpening(
      plan.unit.design.openingDischargeCoefficient,
      1,
      ambient.pressure,
      roomTemperature(frame),
      frame.separatorPressure,
    ),
  );
  const value = trapIsFull(frame) ? 0 : largestOpeningCarried(reserve, perArea);
  // The bore goes with the root of the area, so half of each relative part.
  const u = combine2(
    fittedPartOf(frame, reserveSlot, value / 2 / Math.max(reserve, 1e-9)),
    part(frame, 'openingDischargeCoefficient', (value / 2) * rectangular(openingHalfWidth)),
  );
  writeFitted(frame, plan.slot.largestOpeningCarried, value, u);
}

/**
 * Air of one open hose, free m³/s. Behind the return stub stands the separator's pressure (choked there, so that its own
 * loss does not matter), behind the supply stub the supply tank's less the greatest loss on the supply main.
 */
export function flowOfOneHose(frame: UnitFrame): number {
  const { plan, ambient } = frame;
  if (plan.hose === null) return Number.NaN;
  const supplySide = plan.hose.inletBoreM === 0 ? 0 : frame.supplyAnchorPressure - lossNow(frame, plan.supplyLossPa);
  return openHoseFlow(
    plan.hose,
    ambient.pressure,
    roomTemperature(frame),
    pascalAbsolute(supplySide),
    frame.separatorPressure,
  );
}
