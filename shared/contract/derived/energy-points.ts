import type { PointRow } from '../quantity-kind';

/** How sure the powers are that energies are added up from: kept in history beside them, as it was at the time. `<point>Uncertainty`. */
export const energyUncertaintyPoints: readonly PointRow[] = [
  ['heatRemovedUncertainty', 'power', 'W', 'Heat removed, expanded uncertainty'],
  ['facilityHeatUncertainty', 'power', 'W', 'Facility heat, expanded uncertainty'],
  ['chipPowerUncertainty', 'power', 'W', 'Chip power, expanded uncertainty'],
];
