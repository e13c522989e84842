import { freeAirOfMass } from './free-air';
import { airThroughOpening } from './air-through-opening';
import {
  freeAirCubicMetrePerSecond,
  type Celsius,
  type FreeAirCubicMetrePerSecond,
  type PascalAbsolute,
} from '../units/quantity';

/** Area of a round bore, m². */
export const boreArea = (boreM: number): number => (Math.PI / 4) * boreM * boreM;

/** Bore of a round opening of this area, m. */
export const boreOfArea = (areaM2: number): number => Math.sqrt((4 * areaM2) / Math.PI);

/** How one server hose lets air pass once it is open at its far end; a bore of 0 lets none pass. */
export interface OpenHose {
  /** Bore of the stub on the return side: nothing else stops the air there. */
  readonly outletBoreM: number;
  /** Bore through which air comes back into the supply side; 0 behind a check valve. */
  readonly inletBoreM: number;
  /** 0.6 (sharp edge) to 0.85 (long hole): common practice, no source. */
  readonly dischargeCoefficient: number;
}

/**
 * Air that one open hose draws in at both of its stubs, as free air; choked or not as NACA Report 1135 has it
 * (`airThroughOpening`). `supplySide` and `returnSide` are the pressures behind the stubs.
 */
export function openHoseFlow(
  hose: OpenHose,
  ambient: PascalAbsolute,
  room: Celsius,
  supplySide: PascalAbsolute,
  returnSide: PascalAbsolute,
): FreeAirCubicMetrePerSecond {
  const { dischargeCoefficient: c } = hose;
  const out = freeAirOfMass(airThroughOpening(c, boreArea(hose.outletBoreM), ambient, room, returnSide));
  if (hose.inletBoreM === 0) return out;
  return freeAirCubicMetrePerSecond(
    out + freeAirOfMass(airThroughOpening(c, boreArea(hose.inletBoreM), ambient, room, supplySide)),
  );
}
