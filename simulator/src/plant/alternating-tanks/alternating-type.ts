import type { PlantParameters } from '../plant-parameters';
import { unitTypeM } from '../unit-type-m';

/** Each of the two tanks, m³; and the water at which it is full and at which it is emptied. */
export const tankM3 = 0.2;
export const fullM3 = 0.18;
export const emptyM3 = 0.04;
/** Of the evacuated side beside the filling tank. */
export const receiverM3 = 1.5;

/**
 * Four racks of type M on two tanks: one fills under vacuum while the other discharges; the exchanger stands in the
 * supply line. "Supply tank" is whichever discharges, "separator" whichever fills, with the receiver. Common practice
 * and arithmetic, no published source.
 */
export const alternatingType: PlantParameters = {
  ...unitTypeM,
  racks: 4,
  ratedFlowM3PerS: unitTypeM.ratedFlowM3PerS / 2,
  elevationM: { ...unitTypeM.elevationM, supplySurface: 1.0, separatorSurface: 0.8 },
  volumeM3: {
    ...unitTypeM.volumeM3,
    supplyTankWater: fullM3,
    supplyTankGas: tankM3 - fullM3,
    supplyTankAreaM2: 0.6,
    separatorWater: emptyM3,
    separatorGas: receiverM3 + tankM3 - emptyM3,
    separatorAreaM2: 0.6,
    supplyMain: unitTypeM.volumeM3.supplyMain / 2,
    returnMain: unitTypeM.volumeM3.returnMain / 2,
    unit: 0.02,
  },
  exchanger: {
    ...unitTypeM.exchanger,
    uaWPerK: unitTypeM.exchanger.uaWPerK / 2,
    referenceKgPerS: unitTypeM.exchanger.referenceKgPerS / 2,
    facilityFullKgPerS: unitTypeM.exchanger.facilityFullKgPerS / 2,
  },
  vacuum: { ...unitTypeM.vacuum, control: 'continuous' },
  baseInLeakFreeM3PerS: 0.4 / 60000,
};
