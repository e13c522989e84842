import type { PointRow } from '../quantity-kind';

/** What comes, by how things have gone, and what has changed since the unit was called sound. */
export const trendPoints: readonly PointRow[] = [
  ['marginTimeToLimit', 'duration', 's', 'Time until the vacuum margin is at its limit'],
  ['filterTimeToLimit', 'duration', 's', 'Time until the filter is at its limit'],
  ['marginTrend', 'pressureDifference', 'Pa', 'Vacuum margin, change in a day by the last hours'],
  ['filterTrend', 'ratio', '1', 'Filter resistance, change in a day by the last two days'],
  ['inLeakTrend', 'freeAirFlow', 'm3/s', 'In-leak, change in a day by the last two days (free air)'],
  ['uaTrend', 'ratio', '1', 'UA against clean, change in a day by the last two weeks'],
  ['plateTrend', 'ratio', '1', 'Plate resistance, mean of all plates, change in a day by the last two weeks'],
  ['heatBalanceShift', 'ratio', '1', 'Heat balance, change since the known-good period (±1 is sure)'],
  ['captureShift', 'ratio', '1', 'Capture, change since the known-good period (±1 is sure)'],
  ['flowShareShift', 'ratio', '1', 'Loop flow against expected, change since the known-good period (±1 is sure)'],
  ['uaRatioShift', 'ratio', '1', 'UA against clean, change since the known-good period (±1 is sure)'],
  ['pumpEfficiencyShift', 'ratio', '1', 'Pump efficiency, change since the known-good period (±1 is sure)'],
  ['inLeakShift', 'ratio', '1', 'In-leak, change since the known-good period (±1 is sure)'],
  ['patternDistance', 'ratio', '1', 'Distance along the usual pattern of the main signals (1 is its limit)'],
  ['patternResidual', 'ratio', '1', 'Distance off the usual pattern of the main signals (1 is its limit)'],
];
