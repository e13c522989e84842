import type { PlantInputs } from '../plant/plant-inputs';
import type { PlantParameters } from '../plant/plant-parameters';

export const faultKinds = [
  'cutServerHose',
  'cutRackMain',
  'slowInLeak',
  'vacuumSourceDead',
  'vacuumCapacityLoss',
  'sealWaterWarm',
  'standbyCheckValveLeaks',
  'trapFloatStuck',
  'overEvacuation',
  'pumpHeadLoss',
  'pumpTrip',
  'filterLoading',
  'rackBlocked',
  'plateBlocked',
  'plateResistance',
  'exchangerFouled',
  'exchangerPinhole',
  'facilityWarm',
  'facilityFlowLost',
  'valveStuck',
  'ventStuck',
  'waterLoss',
  'overfill',
  'powerFailure',
  'ambientFall',
  'loadStep',
  'connectionLost',
] as const;
export type FaultKind = (typeof faultKinds)[number];

export const faultSizes = ['small', 'usual', 'large'] as const;
export type FaultSize = (typeof faultSizes)[number];

/** What is asked for: which fault, how big, and where inside the unit. */
export interface FaultOrder {
  readonly fault: FaultKind;
  readonly size: FaultSize;
  /** Index of the rack. Only where the fault sits in one. */
  readonly rack: number;
  /** cutServerHose: does the inlet check valve close? */
  readonly checkValve: 'good' | 'stuckOpen';
  /** loadStep: which way. */
  readonly direction: 'rise' | 'fall';
  /** cutServerHose: free L/min through it while sonic, a number in place of its size. */
  readonly freeLPerMin?: string;
  /** One of the fault's own `options`; its first where left out. */
  readonly option?: string;
}

/** What a fault may move: the surroundings of the plant, and its line to the broker. */
export interface FaultTarget {
  readonly inputs: PlantInputs;
  lineLost: boolean;
}

export interface Fault {
  readonly kind: FaultKind;
  readonly title: string;
  /** A fault of one rack needs a branch in the order. */
  readonly inRack: boolean;
  /** Ways in which it comes, the usual one first. */
  readonly options?: readonly string[];
  /** Time constants with which it comes and goes, s; 0: at once. */
  readonly onsetS: number;
  readonly repairS: number;
  /** Ends by itself after so many seconds; null: stays until repaired. */
  lastsS(size: FaultSize): number | null;
  /** Changes the target by the fault at a strength of 0 (gone) to 1 (full). */
  apply(target: FaultTarget, parameters: PlantParameters, order: FaultOrder, strength: number): void;
}
