import { expanded } from '@ebbline/shared/uncertainty/combine';
import type { DerivedPointOfUnit } from '../derived-point';
import {
  deriveChipPowerUncertainty,
  deriveFacilityHeatUncertainty,
  deriveHeatRemovedUncertainty,
} from '../points/power-uncertainty';

const row = (of: string, derive: DerivedPointOfUnit['derive']): DerivedPointOfUnit => ({
  id: `${of}Uncertainty`,
  unit: 'W',
  inputs: [of],
  formula: 'U = k·u, k = 2',
  source: 'JCGM 100:2008, 6.2.1',
  equation: expanded,
  derive,
});

/** How sure the powers are that energies are added up from; after the powers themselves. */
export const energyPoints: readonly DerivedPointOfUnit[] = [
  row('heatRemoved', deriveHeatRemovedUncertainty),
  row('facilityHeat', deriveFacilityHeatUncertainty),
  row('chipPower', deriveChipPowerUncertainty),
];
