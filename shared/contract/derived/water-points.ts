import type { PointRow } from '../quantity-kind';

/** Room air and water quality. */
export const waterPoints: readonly PointRow[] = [
  ['dewPointMargin', 'temperatureDifference', 'K', 'Dew point margin'],
  ['conductivity25', 'conductivity', 'S/m', 'Conductivity at 25 °C'],
  ['ph', 'ph', '1', 'pH, electrode slope at the water’s temperature'],
];
