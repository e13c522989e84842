import { resistanceAtFlow, thermalResistance } from '@ebbline/shared/heat/thermal-resistance';
import { steadyTemperature, timeToTemperature } from '@ebbline/shared/heat/time-to-temperature';
import { timeUntilGone } from '@ebbline/shared/hydraulics/tank-water';
import type { DerivedPointOfUnit } from '../derived-point';
import { derivePlateRatio, derivePlateResistance, hasPlateRatio, hasPlateResistance } from '../points/plate-resistance';
import {
  deriveRideThroughFans,
  deriveRideThroughFlow,
  deriveRideThroughPlate,
  deriveTemperatureOnFans,
  hasRideThroughFans,
  hasRideThroughFlow,
  hasRideThroughPlate,
  hasTemperatureOnFans,
} from '../points/ride-through';

/** Plates, the clocks that run when the water stands, and the water itself. */
export const chipPoints: readonly DerivedPointOfUnit[] = [
  {
    id: 'plate.<id>.resistance',
    unit: 'K/W',
    inputs: ['plate.<id>.temperature', 'plate.<id>.power', 'supply.temperature'],
    equation: thermalResistance,
    derive: derivePlateResistance,
    applies: hasPlateResistance,
  },
  {
    id: 'plate.<id>.resistanceRatio',
    unit: '1',
    inputs: ['plate.<id>.resistance', 'branch.<id>.flow or loop.flow'],
    equation: resistanceAtFlow,
    derive: derivePlateRatio,
    applies: hasPlateRatio,
  },
  {
    id: 'rideThroughFlow',
    unit: 's',
    inputs: ['supplyTank.level', 'loop.flow'],
    equation: timeUntilGone,
    derive: deriveRideThroughFlow,
    applies: hasRideThroughFlow,
  },
  {
    id: 'rideThroughPlate',
    unit: 's',
    inputs: ['plate.<id>.temperature', 'plate.<id>.power'],
    equation: timeToTemperature,
    derive: deriveRideThroughPlate,
    applies: hasRideThroughPlate,
  },
  {
    id: 'rideThroughFans',
    unit: 's',
    inputs: ['plate.<id>.temperature', 'plate.<id>.power', 'hall.temperature'],
    equation: timeToTemperature,
    derive: deriveRideThroughFans,
    applies: hasRideThroughFans,
  },
  {
    id: 'temperatureOnFans',
    unit: 'Cel',
    inputs: ['plate.<id>.power', 'hall.temperature'],
    equation: steadyTemperature,
    derive: deriveTemperatureOnFans,
    applies: hasTemperatureOnFans,
  },
];
