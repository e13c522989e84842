import { unreachable } from '@ebbline/shared/errors/unreachable';
import type { PlantInputs } from '../plant/plant-inputs';
import type { PlantParameters } from '../plant/plant-parameters';
import { AlternatingPlant } from './alternating-plant';
import type { FleetUnit } from './demo-fleet';
import { ReservoirPlant } from './reservoir-plant';
import { SharedPlant } from './shared-plant';
import { TankPlant } from './tank-plant';
import type { SettledPlants, UnitPlant } from './unit-plant';

/** Makes the plant of each unit by its shape; units of one loop get one plant between them. */
export class PlantWorks {
  private readonly loops = new Map<string, SharedPlant>();

  constructor(private readonly settled: SettledPlants) {}

  make({ id, shape, loop }: FleetUnit, parameters: PlantParameters, inputs: PlantInputs): UnitPlant {
    if (loop !== null) return this.loop(loop).join(parameters, inputs);
    switch (shape) {
      case 'a':
        return new TankPlant(id, parameters, inputs, this.settled);
      case 'b':
        return new AlternatingPlant(id, parameters, inputs, this.settled);
      case 'c':
        return new ReservoirPlant(id, parameters, inputs, this.settled);
      default:
        return unreachable(shape);
    }
  }

  private loop(id: string): SharedPlant {
    const made = this.loops.get(id) ?? new SharedPlant(id, this.settled);
    this.loops.set(id, made);
    return made;
  }
}
