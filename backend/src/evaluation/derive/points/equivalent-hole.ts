import { equivalentHole, freeAirPerArea } from '@ebbline/shared/hydraulics/equivalent-hole';
import { combine3, rectangular } from '@ebbline/shared/uncertainty/combine';
import { pascalAbsolute, type PascalAbsolute } from '@ebbline/shared/units/quantity';
import { reasonBit } from '../../slots/quality-reasons';
import { openingHalfWidth } from '../derive-constants';
import { fittedPartOf, writeFitted } from '../few-observations';
import { absolutePressureUncertainty } from '../node-pressure';
import { roomTemperature } from '../room-temperature';
import { isSmall } from '../small';
import { part } from '../uncertainty-budget';
import type { UnitFrame } from '../unit-frame';
import type { UnitPlan } from '../unit-plan';
import { uOf } from '../write-point';
import { hasGasAllowance } from './in-leak';

export const hasEquivalentHole = (plan: UnitPlan): boolean =>
  hasGasAllowance(plan) && plan.slot['separator.pressure'] >= 0;
export const hasEquivalentHoleSupply = (plan: UnitPlan): boolean => hasGasAllowance(plan) && plan.supplyAnchor !== null;

/** Bore of the hole on the return side that lets the in-leak in, m: choked there at usual pressures, so that the rate alone gives it. */
export function deriveEquivalentHole(frame: UnitFrame): void {
  const { slot } = frame.plan;
  deriveHole(frame, slot.equivalentHole, slot['separator.pressure'], frame.separatorPressure, 'separator.pressure');
}

/** The same if it is on the supply side, where the flow is not choked: a smaller difference of pressure, a larger hole. */
export function deriveEquivalentHoleSupply(frame: UnitFrame): void {
  const { plan } = frame;
  deriveHole(
    frame,
    plan.slot.equivalentHoleSupply,
    plan.supplyAnchor?.slot ?? -1,
    frame.supplyAnchorPressure,
    plan.slot['supplyTank.pressure'] >= 0 ? 'supplyTank.pressure' : 'supply.pressure',
  );
}

/** Undefined where the in-leak is not surely above nothing. */
function deriveHole(
  frame: UnitFrame,
  target: number,
  pressureSlot: number,
  pressure: PascalAbsolute,
  pressureName: string,
): void {
  const { tally, state, ambient, plan } = frame;
  const inLeakSlot = plan.slot.inLeak;
  tally.begin();
  tally.note(ambient.reasons, ambient.sourceMs);
  const inLeak = tally.take(state, inLeakSlot);
  tally.take(state, pressureSlot);
  const inLeakU = uOf(frame, inLeakSlot);
  if (!tally.isBad() && (inLeak <= 0 || isSmall(inLeak, inLeakU) || !(pressure < ambient.pressure)))
    tally.note(reasonBit.undefined, Infinity);
  const { openingDischargeCoefficient: c } = plan.unit.design;
  const room = roomTemperature(frame);
  const value = equivalentHole(inLeak, c, ambient.pressure, room, pressure);
  // Half of what moves the area: the bore goes with its root.
  const through = (p: number): number => freeAirPerArea(c, ambient.pressure, room, pascalAbsolute(p));
  const pressureU = absolutePressureUncertainty(frame, pressureSlot);
  const byPressure = (through(pressure - pressureU) - through(pressure + pressureU)) / 2 / through(pressure);
  const u = combine3(
    fittedPartOf(frame, inLeakSlot, value / 2 / inLeak),
    part(frame, 'openingDischargeCoefficient', (value / 2) * rectangular(openingHalfWidth)),
    part(frame, pressureName, (value / 2) * byPressure),
  );
  writeFitted(frame, target, value, u);
}
