import type { Fluid } from '@ebbline/shared/fluid-properties/fluid';
import { geopotentialAltitude, standardPressure } from '@ebbline/shared/fluid-properties/standard-atmosphere';
import { staticHead } from '@ebbline/shared/hydraulics/static-head';
import { celsius, metre } from '@ebbline/shared/units/quantity';
import type { UnitDesign, WettedNode } from './compiled-site';

/** What the check needs of a plant; SI, °C. */
export interface WindowPlant {
  readonly marginPa: number;
  readonly returnC: number;
  readonly loopLossPa: number;
  readonly design: UnitDesign;
  readonly nodes: readonly WettedNode[];
  readonly fluid: Fluid;
}

export interface WindowAtAltitude {
  readonly ambientPa: number;
  /** Highest separator pressure that keeps every wetted place `marginPa` below ambient, running or stopped. */
  readonly highestPa: number;
  /** Lowest separator pressure that neither boils at the top of the return nor starves the pump. */
  readonly lowestPa: number;
  readonly lowestBecause: 'pump inlet' | 'boiling at the highest return';
}

/**
 * The room that a plant's separator pressure has at an altitude (geometric, m), in the standard atmosphere:
 * the equations of vacuum margin, boiling margin and NPSH (`shared/hydraulics`) turned round. Null where heights are missing.
 */
export function windowAtAltitude(plant: WindowPlant, altitudeM: number): WindowAtAltitude | null {
  const { design, nodes } = plant;
  const { supplyTankSurfaceM, returnInletM } = design;
  const lowest = (main: WettedNode['main']): number =>
    Math.min(...nodes.filter((node) => node.main === main).map((node) => node.elevationM));
  const highestReturnM = Math.max(...nodes.filter((node) => node.main === 'return').map((node) => node.elevationM));
  if (supplyTankSurfaceM === null || returnInletM === null || !Number.isFinite(lowest('supply'))) return null;

  const density = plant.fluid.density(celsius(plant.returnC));
  const head = (heightM: number): number => staticHead(density, metre(heightM));
  const ambientPa = standardPressure(geopotentialAltitude(metre(altitudeM)));
  const vapourPa = plant.fluid.vapourPressure(celsius(plant.returnC));

  const tankHighest = ambientPa - plant.marginPa - head(supplyTankSurfaceM - lowest('supply'));
  const bySupply = tankHighest + head(supplyTankSurfaceM - returnInletM) - plant.loopLossPa;
  const byReturn = Number.isFinite(lowest('return'))
    ? ambientPa - plant.marginPa - head(returnInletM - lowest('return'))
    : Number.POSITIVE_INFINITY;

  const byBoiling = Number.isFinite(highestReturnM) ? vapourPa + head(highestReturnM - returnInletM) : vapourPa;
  const { npshLimitM, separatorSurfaceM, pumpInletM } = design;
  const byPump =
    npshLimitM === null || separatorSurfaceM === null || pumpInletM === null
      ? Number.NEGATIVE_INFINITY
      : vapourPa + head(npshLimitM - (separatorSurfaceM - pumpInletM)) + design.pumpSuctionLossPa;
  return {
    ambientPa,
    highestPa: Math.min(bySupply, byReturn),
    lowestPa: Math.max(byBoiling, byPump),
    lowestBecause: byPump > byBoiling ? 'pump inlet' : 'boiling at the highest return',
  };
}

/** Highest altitude, m, at which the plant still has a window; by halving, to 1 m. Null: none at −400 m already. */
export function highestAltitude(plant: WindowPlant): number | null {
  const open = (altitudeM: number): boolean => {
    const window = windowAtAltitude(plant, altitudeM);
    return window !== null && window.highestPa > window.lowestPa;
  };
  let low = -400;
  let high = 10_000;
  if (!open(low)) return null;
  while (high - low > 1) {
    const middle = (low + high) / 2;
    if (open(middle)) low = middle;
    else high = middle;
  }
  return Math.round(low);
}

const kilopascal = (pa: number): string => `${(pa / 1000).toFixed(1)} kPa`;

/** Why this plant has no pressure window at its altitude, or null where it has one (or heights are missing). */
export function noWindowMessage(plant: WindowPlant, altitudeM: number): string | null {
  const window = windowAtAltitude(plant, altitudeM);
  if (window === null || window.highestPa > window.lowestPa) return null;
  const highest = highestAltitude(plant);
  return (
    `this plant has no pressure window at ${altitudeM} m: in a standard atmosphere of ${kilopascal(window.ambientPa)} its separator ` +
    `could stand at ${kilopascal(window.highestPa)} at most to keep every place outside the unit ${kilopascal(plant.marginPa)} below ambient, ` +
    `but needs ${kilopascal(window.lowestPa)} at least (${window.lowestBecause}, return at ${plant.returnC.toFixed(1)} °C); ` +
    (highest === null ? 'it has none at any altitude' : `it has one up to about ${Math.floor(highest / 10) * 10} m`) +
    '; lower the loss, the return temperature or the NPSH limit, or check the heights; if it is run so all the same, say why under pressureWindow.acceptNone'
  );
}
