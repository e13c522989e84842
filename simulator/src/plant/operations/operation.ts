import type { PlantInputs } from '../plant-inputs';
import type { PlantParameters } from '../plant-parameters';
import type { PlantState } from '../plant-state';

export const operationKinds = [
  'start',
  'stop',
  'standby',
  'tightnessTest',
  'fill',
  'purge',
  'drain',
  'topUp',
  'vent',
  'evacuate',
  'isolateBranch',
  'restoreBranch',
  'openHose',
  'closeHose',
] as const;
export type OperationKind = (typeof operationKinds)[number];

/** What people ask of the unit. */
export interface OperationOrder {
  readonly operation: OperationKind;
  /** Index of the rack. Only where the work is on one. */
  readonly rack: number;
  /** Water to put in, m³. Only where water is put in: else what is missing. */
  readonly volumeM3?: number;
  /** Free air that an opened hose lets in while sonic, m³/s. Only of openHose: else what a coupling lets in. */
  readonly freeM3PerS?: number;
}

/** What an operation looks at, and what it may set: the orders. */
export interface OperationSite {
  readonly parameters: PlantParameters;
  readonly state: PlantState;
  readonly inputs: PlantInputs;
  readonly order: OperationOrder;
  /** Seconds since it began. */
  readonly sinceS: number;
  /** What the top-up meter showed when it began, m³. */
  readonly meterM3: number;
}

export interface Operation {
  readonly kind: OperationKind;
  readonly title: string;
  readonly inRack: boolean;
  /** Called once a second, the first time at 0 s. True once it is done: then it is called no more. */
  step(site: OperationSite): boolean;
}
