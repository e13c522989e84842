import type { PointRow } from '../quantity-kind';

/** Flow against what drives it. */
export const hydraulicPoints: readonly PointRow[] = [
  ['expectedFlow', 'volumeFlow', 'm3/s', 'Flow that driving pressure and commissioned resistance give'],
  ['flowShare', 'ratio', '1', 'Loop flow ÷ expected flow'],
  ['loopResistance', 'ratio', '1', 'Loop resistance relative to commissioned'],
  ['filterResistance', 'ratio', '1', 'Filter resistance relative to clean'],
  ['pumpEfficiency', 'ratio', '1', 'Pump efficiency, wire to water'],
  ['branch.<id>.flowShare', 'ratio', '1', 'Branch flow ÷ expected share'],
];
