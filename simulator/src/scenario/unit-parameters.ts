import { alternatingType } from '../plant/alternating-tanks/alternating-type';
import type { PlantParameters } from '../plant/plant-parameters';
import { reservoirType } from '../plant/reservoir-pump/reservoir-type';
import { racksPerUnit, sharedUnitType } from '../plant/shared-loop/shared-loop-type';
import { unitTypes } from '../plant/unit-types';
import type { FleetUnit } from './demo-fleet';

/** What kind of plant a unit is: type, shape, alone or not. */
export type PlantTypeId = 'M' | 'H' | 'bench' | 'M-pair' | 'M-alternating' | 'M-reservoir';

export function plantTypeOf({ kind, shape, loop }: FleetUnit): PlantTypeId {
  if (loop !== null) return 'M-pair';
  if (shape === 'b') return 'M-alternating';
  return shape === 'c' ? 'M-reservoir' : kind;
}

export const plantTypes: Readonly<Record<PlantTypeId, PlantParameters>> = {
  ...unitTypes,
  'M-pair': { ...sharedUnitType, racks: racksPerUnit },
  'M-alternating': alternatingType,
  'M-reservoir': reservoirType,
};

/** The unit's type with what is its own. */
export function parametersOf(unit: FleetUnit): PlantParameters {
  const type = plantTypes[plantTypeOf(unit)];
  return {
    ...type,
    vacuum: { ...type.vacuum, control: unit.exhaustMeter ? 'continuous' : 'startStop' },
    exchanger: { ...type.exchanger, uaWPerK: type.exchanger.uaWPerK * unit.exchangerShare },
  };
}

export const racksOf = (unit: FleetUnit): number => plantTypes[plantTypeOf(unit)].racks;
