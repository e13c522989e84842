import type { PlantParameters } from '../plant/plant-parameters';
import { unitTypes } from '../plant/unit-types';
import type { FleetUnit } from './demo-fleet';

/** The unit's type with what is its own. */
export function parametersOf(unit: FleetUnit): PlantParameters {
  const type = unitTypes[unit.kind];
  return {
    ...type,
    vacuum: { ...type.vacuum, control: unit.exhaustMeter ? 'continuous' : 'startStop' },
    exchanger: { ...type.exchanger, uaWPerK: type.exchanger.uaWPerK * unit.exchangerShare },
  };
}
