import type { PointRow } from '../quantity-kind';

/** Pressures along the loop, and how far they are from their walls. */
export const pressurePoints: readonly PointRow[] = [
  ['vacuumMargin', 'pressureDifference', 'Pa', 'Vacuum margin'],
  ['vacuumMarginWorst', 'pressureDifference', 'Pa', 'Vacuum margin, worst of running and stopped'],
  ['branch.<id>.vacuumMargin', 'pressureDifference', 'Pa', 'Vacuum margin of a branch, at its own sensor'],
  ['boilingMargin', 'pressureDifference', 'Pa', 'Boiling margin'],
  ['lowerWallMargin', 'pressureDifference', 'Pa', 'Margin to the nearest lower wall'],
  ['npshAvailable', 'level', 'm', 'Net positive suction head available'],
  ['drivingPressure', 'pressureDifference', 'Pa', 'Driving pressure'],
  ['node.<id>.pressure', 'absolutePressure', 'Pa', 'Pressure at a wetted place'],
  ['node.<id>.pressureStopped', 'absolutePressure', 'Pa', 'Pressure at a wetted place once the water stands'],
];
