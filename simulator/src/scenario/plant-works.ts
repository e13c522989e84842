import type { PlantInputs } from '../plant/plant-inputs';
import type { PlantParameters } from '../plant/plant-parameters';
import type { FleetUnit } from './demo-fleet';
import { TankPlant } from './tank-plant';
import type { SettledPlants, UnitPlant } from './unit-plant';

/** Makes the plant of each unit by its shape; units of one loop get one plant between them. */
export class PlantWorks {
  constructor(private readonly settled: SettledPlants) {}

  make(unit: FleetUnit, parameters: PlantParameters, inputs: PlantInputs): UnitPlant {
    return new TankPlant(unit.id, parameters, inputs, this.settled);
  }
}
