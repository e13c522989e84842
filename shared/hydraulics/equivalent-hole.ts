import type { Celsius, PascalAbsolute } from '../units/quantity';
import { celsius, metre, pascalAbsolute, type Metre } from '../units/quantity';
import { airThroughOpening } from './air-through-opening';
import { freeAirOfMass } from './free-air';
import { boreOfArea } from './open-hose';

/** Free air through one square metre of opening, m/s: what NACA Report 1135 gives, choked or not (`airThroughOpening`). */
export const freeAirPerArea = (
  dischargeCoefficient: number,
  ambient: PascalAbsolute,
  ambientTemperature: Celsius,
  loop: PascalAbsolute,
): number => freeAirOfMass(airThroughOpening(dischargeCoefficient, 1, ambient, ambientTemperature, loop));

/**
 * Bore of the round hole through which so much free air comes into a loop at this pressure: the orifice equation solved for
 * its area (NACA Report 1135). Below 0.528 of ambient the flow is choked, so that the rate alone gives the size. NaN for
 * a rate below 0 and where the loop is not below ambient.
 */
export function equivalentHole(
  freeAirM3PerS: number,
  dischargeCoefficient: number,
  ambient: number,
  ambientTemperature: number,
  loop: number,
): Metre {
  const perArea = freeAirPerArea(
    dischargeCoefficient,
    pascalAbsolute(ambient),
    celsius(ambientTemperature),
    pascalAbsolute(loop),
  );
  return metre(perArea > 0 ? boreOfArea(freeAirM3PerS / perArea) : Number.NaN);
}
