import type { PlantParameters } from '../plant-parameters';
import { unitTypeM } from '../unit-type-m';

const { volumeM3 } = unitTypeM;

/** One of the units on the loop: tanks, pump, exchanger and its own two mains. It has no rack of its own. */
export const sharedUnitType: PlantParameters = {
  ...unitTypeM,
  racks: 0,
  vacuum: { ...unitTypeM.vacuum, control: 'continuous' },
};

/** The racks between the headers: eight of type M, which one unit alone can carry. */
export const sharedRacksType: PlantParameters = {
  ...unitTypeM,
  volumeM3: {
    ...volumeM3,
    supplyTankWater: 0,
    supplyTankGas: 0,
    separatorWater: 0,
    separatorGas: 0,
    supplyMain: 0,
    returnMain: 0,
    unit: 0,
  },
};

/** As a unit's gateway sees it: the racks that it tells of are half of the loop's. */
export const racksPerUnit = unitTypeM.racks / 2;
