import { airMolarMassKg, freeAirMolPerM3 } from './water';

/** Discharge coefficient of a torn hose or coupling. Common practice, 0.6 to 0.85. */
const dischargeCoefficient = 0.7;
const gamma = 1.4;
const airGasConstant = 287.05;
const criticalRatio = (2 / (gamma + 1)) ** (gamma / (gamma - 1));

/**
 * Room air through a round opening into lower pressure, mol/s: isentropic nozzle, sonic below 0.528 of
 * ambient (any textbook of gas dynamics). Zero when the inside is at or above ambient.
 */
export function openingMolPerS(boreM: number, insidePa: number, ambientPa: number, roomC: number): number {
  if (insidePa >= ambientPa) return 0;
  const ratio = Math.max(insidePa / ambientPa, criticalRatio);
  const roomK = roomC + 273.15;
  // energy of the expansion gives the speed, the isentrope gives the density at the throat
  const speed = Math.sqrt(((2 * gamma) / (gamma - 1)) * airGasConstant * roomK * (1 - ratio ** ((gamma - 1) / gamma)));
  const density = (ambientPa / (airGasConstant * roomK)) * ratio ** (1 / gamma);
  const areaM2 = (Math.PI / 4) * boreM * boreM;
  return (dischargeCoefficient * areaM2 * density * speed) / airMolarMassKg;
}

/** The round opening, m, that lets in so much free air, m³/s, while its flow is sonic. */
export function sonicBoreM(freeM3PerS: number, ambientPa: number, roomC: number): number {
  return Math.sqrt((freeM3PerS * freeAirMolPerM3) / openingMolPerS(1, 0, ambientPa, roomC));
}

/** Share of its sonic flow that an opening passes into a pressure: 1 below 0.528 of ambient, 0 at ambient. */
export function sonicShare(insidePa: number, ambientPa: number): number {
  if (insidePa <= criticalRatio * ambientPa) return 1;
  if (insidePa >= ambientPa) return 0;
  const ratio = insidePa / ambientPa;
  const flow = (at: number): number => at ** (1 / gamma) * Math.sqrt(1 - at ** ((gamma - 1) / gamma));
  return flow(ratio) / flow(criticalRatio);
}
