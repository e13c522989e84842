import type { PlantParameters } from '../plant-parameters';
import { unitTypeM } from '../unit-type-m';

/** How far the header and its bladder give way, m³/Pa: 2.5 L over the loop's pressure. An estimate. */
export const headerM3PerPa = 6e-8;

/**
 * Four racks of type M on a pump that draws from the vacuum reservoir and pushes straight into the loop. The "supply
 * tank" is the header behind the exchanger: full of water, with a bladder of some litres. Common practice and
 * arithmetic, no published source.
 */
export const reservoirType: PlantParameters = {
  ...unitTypeM,
  racks: 4,
  ratedFlowM3PerS: unitTypeM.ratedFlowM3PerS / 2,
  // at the supply sensor: the loop's 40.2 kPa, and 0.9 m of water up to the return inlet
  set: { ...unitTypeM.set, supplyTankPa: 80_900 },
  elevationM: { ...unitTypeM.elevationM, supplySurface: 0.3, delivery: 0.3 },
  volumeM3: {
    ...unitTypeM.volumeM3,
    supplyTankWater: 0.02,
    supplyTankGas: 0,
    // the header's pressure is told by its sensor, not by a water surface
    supplyTankAreaM2: 1e6,
    supplyMain: unitTypeM.volumeM3.supplyMain / 2,
    returnMain: unitTypeM.volumeM3.returnMain / 2,
    separatorWater: 0.12,
    separatorGas: 0.4,
    separatorAreaM2: 0.2,
    unit: 0.02,
  },
  pump: { ...unitTypeM.pump, powerW: 600 },
  exchanger: {
    ...unitTypeM.exchanger,
    uaWPerK: unitTypeM.exchanger.uaWPerK / 2,
    referenceKgPerS: unitTypeM.exchanger.referenceKgPerS / 2,
    facilityFullKgPerS: unitTypeM.exchanger.facilityFullKgPerS / 2,
  },
  vacuum: { ...unitTypeM.vacuum, control: 'continuous' },
  baseInLeakFreeM3PerS: 0.4 / 60000,
};
