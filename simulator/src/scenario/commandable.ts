import { branchId } from '../plant/plant-readings';
import { scenarioKinds } from './catalogue/scenario-kinds';
import type { Commandable } from './command';
import type { FleetUnit } from './demo-fleet';
import { parametersOf } from './unit-parameters';

/** What a fleet's commands may speak of. */
export const commandableOf = (fleet: readonly FleetUnit[]): Commandable => ({
  kinds: scenarioKinds(fleet),
  units: fleet.map((unit) => ({
    id: unit.id,
    branches: Array.from({ length: parametersOf(unit).racks }, (_, r) => branchId(r)),
  })),
});
