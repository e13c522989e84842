import type { PointRow } from '../quantity-kind';

/** What leaves as heat, and against what. */
export const heatPoints: readonly PointRow[] = [
  ['massFlow', 'massFlow', 'kg/s', 'Mass flow'],
  ['heatRemoved', 'power', 'W', 'Heat removed'],
  ['facilityHeat', 'power', 'W', 'Facility heat'],
  ['chipPower', 'power', 'W', 'Chip power'],
  ['capture', 'ratio', '1', 'Capture (heat removed ÷ chip power)'],
  ['heatBalance', 'ratio', '1', 'Heat balance'],
  ['heatBalanceSignificance', 'ratio', '1', 'Heat balance, gap over its standard uncertainty'],
  ['branch.<id>.heatRemoved', 'power', 'W', 'Branch heat removed'],
];
