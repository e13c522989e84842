import type { HoseOpening } from './hose-opening';
import type { PlantParameters } from './plant-parameters';

/** Modes of a unit, in the order of the contract; the reading `mode` is the index in this list. */
export const plantModes = [
  'off',
  'vented',
  'tightnessTest',
  'filling',
  'purging',
  'starting',
  'running',
  'standby',
  'stopping',
  'draining',
  'service',
  'powerReturn',
] as const;
export type PlantMode = (typeof plantModes)[number];

/** What people and the start order have told the unit to do. It stays until told otherwise. */
export interface Orders {
  mode: PlantMode;
  vacuumOn: boolean;
  pumpOn: boolean;
  /** The stop valve below the supply tank. */
  loopOpen: boolean;
  /** The facility valve is let to its controller; else it shuts. */
  facilityOpen: boolean;
  /** Chips may work; else they draw nothing. */
  loadPermitted: boolean;
  /** Both tanks are let up to ambient pressure. */
  vented: boolean;
  /** Set points, as absolute pressures at an ambient of 101.3 kPa. */
  supplyTankSetPa: number;
  separatorSetPa: number;
  supplySetC: number;
  /** gauge: pressure set points follow the barometer. */
  pressureReference: 'absolute' | 'gauge';
  /** The facility valve held by hand, 0 to 1; null: by its controller. */
  valveByHand: number | null;
  /** Treated water in, m³/s: a fill or a top-up, through the meter. */
  fillM3PerS: number;
  /** Water out to the drain, m³/s. */
  drainM3PerS: number;
  /** By rack: valves shut on supply and return. */
  readonly isolated: boolean[];
  /** By rack: a hose opened on purpose under a permit. */
  readonly openedHose: (HoseOpening | null)[];
}

/** Running, all by controllers, nothing isolated. */
export function runningOrders({ racks, set }: Pick<PlantParameters, 'racks' | 'set'>): Orders {
  return {
    mode: 'running',
    vacuumOn: true,
    pumpOn: true,
    loopOpen: true,
    facilityOpen: true,
    loadPermitted: true,
    vented: false,
    supplyTankSetPa: set.supplyTankPa,
    separatorSetPa: set.separatorPa,
    supplySetC: set.supplyC,
    pressureReference: 'absolute',
    valveByHand: null,
    fillM3PerS: 0,
    drainM3PerS: 0,
    isolated: new Array<boolean>(racks).fill(false),
    openedHose: new Array<HoseOpening | null>(racks).fill(null),
  };
}
