import type { PointRow } from '../quantity-kind';

/** Chips and plates. */
export const chipPoints: readonly PointRow[] = [
  ['rideThroughFlow', 'duration', 's', 'Ride-through on stored flow'],
  ['rideThroughPlate', 'duration', 's', 'Ride-through, plate to its limit without flow'],
  ['rideThroughFans', 'duration', 's', 'Ride-through with fans'],
  ['temperatureOnFans', 'temperature', 'Cel', 'Hottest chip expected on fans alone'],
  ['plate.<id>.resistance', 'thermalResistance', 'K/W', 'Plate resistance, case to supply'],
  ['plate.<id>.resistanceRatio', 'ratio', '1', 'Plate resistance against commissioned, at equal flow'],
];
