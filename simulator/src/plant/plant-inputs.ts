import type { PlantParameters } from './plant-parameters';

/** Everything from outside that moves the plant: surroundings, work, and what faults have done to it. */
export interface PlantInputs {
  ambientPa: number;
  hallC: number;
  facilitySupplyC: number;
  /** Share of the usual facility flow that the building gives, 0 to 1. */
  facilityFlowShare: number;
  /** Chip power as a share of rated, by rack. */
  loadShare: number[];
  /** Air into the receiver beside the usual tightness, m³/s of free air. */
  inLeakFreeM3PerS: number;
  /** By rack; null: closed. */
  opening: (HoseOpening | null)[];
}

/** The hose of one server lies open on the return side of its plates. */
export interface HoseOpening {
  /** Bore that limits the air into the return, m. */
  readonly boreM: number;
  /** The inlet check valve does not close: air also goes back through the restrictor. */
  readonly checkValveStuckOpen: boolean;
}

/** Rated load, usual surroundings, nothing broken. */
export function ratedInputs(parameters: PlantParameters): PlantInputs {
  return {
    ambientPa: 101300,
    hallC: 27,
    facilitySupplyC: parameters.exchanger.facilitySupplyC,
    facilityFlowShare: 1,
    loadShare: new Array<number>(parameters.racks).fill(1),
    inLeakFreeM3PerS: 0,
    opening: new Array<HoseOpening | null>(parameters.racks).fill(null),
  };
}
