import type { Fluid } from '@ebbline/shared/fluid-properties/fluid';
import { celsius } from '@ebbline/shared/units/quantity';
import type { UnitDesign } from '../site/compiled-unit';
import { longestBack } from './memory/transit';

/** The water's way of a unit in slices of passed volume. */
export interface TransitPlan {
  readonly sliceM3: number;
  /** From supply sensor to return sensor, with the water that walls, hoses and plates store as much heat as. */
  readonly whole: number;
  /** A front that left at once arrives over so many slices before and after. */
  readonly spread: number;
  /** The same from the plates to the return sensor. */
  readonly fromPlates: number;
  readonly spreadFromPlates: number;
  /** From the return sensor through the unit's tanks to the supply sensor; null where not stated, or too long to look back. */
  readonly throughUnit: number | null;
  /** Time constants of a plate with its chip and of the return sensor, and both together, s. */
  readonly plateLagS: number;
  readonly sensorLagS: number;
  readonly lagS: number;
}

/** As many slices as the way between the sensors has, so far as the way through the unit's tanks can be looked back on too; never fewer. */
const mostSlices = 48;
const fewestSlices = 12;
/** So far beyond its mean the way through two tanks in a row is looked back on. */
export const throughTanks = 1.5;
/** The way and the spread are known to a tenth: half-width, own rule. */
export const transitHalfWidth = 0.1;

/** What a cubic metre stores at 40 °C, J/K: half a per cent from 25 to 60 °C. */
const storedIn = ({ density, heatCapacity }: Fluid): number => density(celsius(40)) * heatCapacity(celsius(40));

/** Null where the site file does not state the volume between the sensors. */
export function transitPlan(
  { volumes, transit, plateHeatCapacityJPerK, commissioned }: UnitDesign,
  fluid: Fluid,
): TransitPlan | null {
  const { supplyToReturnM3, waterM3 } = volumes;
  if (supplyToReturnM3 === null) return null;
  // A front moves as if the walls were water: later by 1 + C/(ρ c V).
  const wholeM3 = supplyToReturnM3 + transit.storedHeatJPerK / storedIn(fluid);
  const throughM3 = waterM3 === null ? 0 : waterM3 - supplyToReturnM3;
  const sliceM3 = Math.min(
    wholeM3 / fewestSlices,
    Math.max(wholeM3 / mostSlices, (throughTanks * throughM3) / longestBack),
  );
  const whole = wholeM3 / sliceM3;
  const fromPlates = (transit.platesToReturnM3 ?? supplyToReturnM3 / 2) / sliceM3;
  // A uniform stretch has a standard deviation of its half-width over √3.
  const spread = Math.max(0.5, Math.min(Math.sqrt(3) * transit.frontSpread, 1 - transitHalfWidth) * whole);
  const plateLagS = transit.plateLagS ?? (plateHeatCapacityJPerK ?? 0) * (commissioned.plateResistanceKPerW ?? 0);
  const throughUnit = waterM3 === null ? null : throughM3 / sliceM3;
  return {
    sliceM3,
    whole,
    spread,
    fromPlates,
    spreadFromPlates: Math.max(
      0.5,
      Math.min(spread * Math.sqrt(fromPlates / whole), fromPlates * (1 - transitHalfWidth)),
    ),
    throughUnit: throughUnit !== null && throughTanks * throughUnit <= longestBack * 1.001 ? throughUnit : null,
    plateLagS,
    sensorLagS: transit.sensorLagS,
    lagS: plateLagS + transit.sensorLagS,
  };
}
