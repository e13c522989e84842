import type { FleetUnit } from '../demo-fleet';
import { operationsOf } from './operation-kinds';
import { plantKinds } from './plant-fault-kinds';
import type { ScenarioKind } from './scenario-kind';
import { sensorFaultsOf } from './sensor-fault-kinds';
import { shapeKinds } from './shape-fault-kinds';
import { siteKinds } from './site-kinds';

/** Everything that can be commanded of a fleet. */
export const scenarioKinds = (fleet: readonly FleetUnit[]): readonly ScenarioKind[] => [
  ...plantKinds(fleet),
  ...sensorFaultsOf(fleet),
  ...shapeKinds(fleet),
  ...siteKinds,
  ...operationsOf(fleet),
];
