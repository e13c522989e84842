import { bubbleVolumeM3 } from './water';

/** A bubble never fills a piece of pipe wholly: a film of water stays. */
export const fullestShare = 0.95;

/** Gas in a mixed cell after a step in which `intoMolPerS` came and water and gas left at one speed (implicit: stable at any step). */
export function heldAfter(
  heldMol: number,
  intoMolPerS: number,
  speedM3PerS: number,
  cellM3: number,
  dtS: number,
): number {
  return (heldMol + intoMolPerS * dtS) / (1 + (speedM3PerS * dtS) / cellM3);
}

/**
 * Room that the gas takes in a cell, m³. Water cannot come back into it faster than `waterInM3PerS` brings it:
 * then the bubbles stay compressed for a moment.
 */
export function gasRoomM3(
  mol: number,
  pressurePa: number,
  waterC: number,
  cellM3: number,
  beforeM3: number,
  waterInM3PerS: number,
  dtS: number,
): number {
  const free = mol > 0 ? Math.min(fullestShare * cellM3, bubbleVolumeM3(mol, pressurePa, waterC)) : 0;
  return Math.max(free, beforeM3 - waterInM3PerS * dtS);
}

/** Temperature of a mixed cell after water came in and heat was put in; what leaves has this temperature. */
export function mixedC(waterM3: number, waterC: number, inM3: number, inC: number, heatK_M3 = 0): number {
  const total = waterM3 + inM3;
  return (waterM3 * waterC + inM3 * inC + heatK_M3) / total;
}
