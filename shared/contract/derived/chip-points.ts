import type { PointRow } from '../quantity-kind';

/** Chips and plates. */
export const chipPoints: readonly PointRow[] = [
  ['rideThroughFlow', 'duration', 's', 'Ride-through on stored flow'],
  ['rideThroughPlate', 'duration', 's', 'Ride-through, plate to its limit without flow'],
  ['rideThroughFans', 'duration', 's', 'Ride-through with fans'],
  ['temperatureOnFans', 'temperature', 'Cel', 'Hottest chip expected on fans alone'],
  ['plate.<id>.resistance', 'thermalResistance', 'K/W', 'Plate resistance, case to supply'],
  ['plate.<id>.resistanceRatio', 'ratio', '1', 'Plate resistance against commissioned, at equal flow'],
  ['plate.<id>.temperatureAtFullPower', 'temperature', 'Cel', 'Chip temperature expected at full power'],
  ['plate.<id>.heatFlux', 'heatFlux', 'W/m2', 'Heat flux of the chip'],
  ['plate.<id>.filmCoefficient', 'filmCoefficient', 'W/(m2.K)', 'Film coefficient in the plate'],
  ['plate.<id>.channelReynolds', 'ratio', '1', 'Reynolds number in the channels of the plate'],
];
