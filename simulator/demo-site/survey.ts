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
/** One record of several, each with both sides settled. */
export const recordShare = 0.015;

/** What drawings say of pipes, chips and plates; the plant knows none of it. Inner sizes, common practice, no source. */
export const surveyed = {
  M: {
    mainM: 0.082,
    manifoldM: 0.038,
    exchangerM2: 12,
    chipM2: 8e-4,
    wettedM2: 60e-4,
    channel: { widthM: 0.5e-3, heightM: 3e-3, count: 20 },
  },
  H: {
    mainM: 0.131,
    manifoldM: 0.051,
    exchangerM2: 26,
    chipM2: 10e-4,
    wettedM2: 150e-4,
    channel: { widthM: 0.5e-3, heightM: 3e-3, count: 50 },
  },
  bench: {
    mainM: 0.02,
    manifoldM: 0.012,
    exchangerM2: 0.4,
    chipM2: 20e-4,
    wettedM2: 200e-4,
    channel: { widthM: 0.5e-3, heightM: 3e-3, count: 60 },
  },
} as const;

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
