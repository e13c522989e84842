import type { PlantParameters } from '../src/plant/plant-parameters';
import type { FleetUnit } from '../src/scenario/demo-fleet';
import { plantTypeOf, plantTypes, type PlantTypeId } from '../src/scenario/unit-parameters';

/** As a surveyor and a commissioning team would find them: half-widths. */
export const heightM = 0.05;
export const lossShare = 0.05;
export const flowShare = 0.01;
export const curveShare = 0.03;
export const boreShare = 0.02;
export const areaShare = 0.01;
export const volumeShare = 0.03;
export const resistanceShare = 0.04;

/** Chip heat into the water at rated load, as a type plate would say. */
export const ratedHeatKW: Readonly<Record<PlantTypeId, number>> = {
  M: 208,
  H: 600,
  bench: 2,
  'M-pair': 104,
  'M-alternating': 104,
  'M-reservoir': 104,
};

/**
 * A type as commissioning met it. Units of a pair were measured with both running, each with half of the loop's water:
 * what the unit's own pipes lose is a quarter then.
 */
export function asCommissioned(id: PlantTypeId): PlantParameters {
  const type = plantTypes[id];
  if (id !== 'M-pair') return type;
  const { lossPa, volumeM3 } = type;
  const quarter = (pa: number): number => pa / 4;
  return {
    ...type,
    ratedFlowM3PerS: type.ratedFlowM3PerS / 2,
    lossPa: {
      ...lossPa,
      main: quarter(lossPa.main),
      supplyToLowPoint: quarter(lossPa.supplyToLowPoint),
      pumpSuction: quarter(lossPa.pumpSuction),
      filter: quarter(lossPa.filter),
      transferRest: quarter(lossPa.transferRest),
    },
    volumeM3: { ...volumeM3 },
  };
}

/** Heights that the unit's shape has, m. */
export function siteElevations(unit: FleetUnit): readonly (readonly [key: string, metres: number])[] {
  const { elevationM } = plantTypes[plantTypeOf(unit)];
  const rows = [
    ['supplyTankSurface', elevationM.supplySurface, 'ab'],
    ['separatorSurface', elevationM.separatorSurface, 'abc'],
    ['returnInlet', elevationM.returnInlet, 'abc'],
    ['pumpInlet', elevationM.pumpEye, 'ac'],
    ['supplySensor', elevationM.supplySensor, 'abc'],
    ['returnSensor', elevationM.returnSensor, 'abc'],
  ] as const;
  return rows.filter(([, , shapes]) => shapes.includes(unit.shape)).map(([key, metres]) => [key, metres]);
}
