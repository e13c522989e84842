import type { PointRow } from '../quantity-kind';

/** The heat exchanger to the facility water. */
export const exchangerPoints: readonly PointRow[] = [
  ['approach', 'temperatureDifference', 'K', 'Approach'],
  ['lmtd', 'temperatureDifference', 'K', 'Log mean temperature difference'],
  ['effectiveness', 'ratio', '1', 'Effectiveness'],
  ['ntu', 'ratio', '1', 'Number of transfer units'],
  ['ua', 'thermalConductance', 'W/K', 'UA'],
  ['uaRatio', 'ratio', '1', 'UA against clean at the same flows'],
  ['foulingResistance', 'thermalResistance', 'K/W', 'Fouling resistance of the exchanger'],
  ['foulingFactor', 'foulingFactor', 'm2.K/W', 'Fouling resistance of one square metre of the exchanger'],
  ['facilityTemperatureRise', 'temperatureDifference', 'K', 'Facility water temperature rise'],
];
