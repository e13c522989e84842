import { alternatingTankGas } from '@ebbline/shared/hydraulics/alternating-tank-gas';
import { pressureRise } from '@ebbline/shared/hydraulics/pressure-rise';
import { largestOpeningCarried, openingsCarried, vacuumReserve } from '@ebbline/shared/hydraulics/vacuum-reserve';
import { gasLoadBySpeed } from '@ebbline/shared/hydraulics/vacuum-suction';
import type { DerivedPointOfUnit } from '../derived-point';
import { deriveGasAllowance, deriveInLeak, hasGasAllowance } from '../points/in-leak';
import {
  deriveLargestOpening,
  deriveOpeningsCarried,
  deriveOpeningsCarriedAll,
  hasOpenings,
} from '../points/openings-carried';
import { deriveVacuumCapacity, hasVacuumCapacity } from '../points/vacuum-capacity';
import { deriveVacuumReserve, deriveVacuumReserveAll } from '../points/vacuum-reserve';

/** Gas, what may come of it, and what the vacuum source has left. */
export const airPoints: readonly DerivedPointOfUnit[] = [
  {
    id: 'gasAllowance',
    unit: 'm3/s',
    inputs: ['commissioned gas load', 'gas budget of the last fill', 'open permits'],
    equation: alternatingTankGas,
    derive: deriveGasAllowance,
    applies: hasGasAllowance,
  },
  {
    id: 'inLeak',
    unit: 'm3/s',
    inputs: [
      'vacuum.exhaustFlow, or else vacuum.running, vacuum.speed, separator.pressure, return.temperature',
      'separator.level',
      'gasAllowance',
    ],
    equation: pressureRise,
    derive: deriveInLeak,
    applies: hasGasAllowance,
  },
  {
    id: 'vacuumCapacity',
    unit: 'm3/s',
    inputs: ['separator.pressure', 'return.temperature', 'vacuum.sealWater.temperature', 'vacuum source curve'],
    equation: gasLoadBySpeed,
    derive: deriveVacuumCapacity,
    applies: hasVacuumCapacity,
  },
  {
    id: 'vacuumReserve',
    unit: 'm3/s',
    inputs: [
      'vacuumCapacity',
      'vacuum.exhaustFlow, or else vacuum.running, vacuum.speed, separator.pressure, return.temperature',
      'separator.level',
    ],
    equation: vacuumReserve,
    derive: deriveVacuumReserve,
    applies: hasVacuumCapacity,
  },
  {
    id: 'vacuumReserveAll',
    unit: 'm3/s',
    inputs: [
      'vacuumCapacity',
      'vacuum.available',
      'vacuum.exhaustFlow, or else vacuum.running, vacuum.speed, separator.pressure, return.temperature',
      'separator.level',
    ],
    equation: vacuumReserve,
    derive: deriveVacuumReserveAll,
    applies: hasVacuumCapacity,
  },
  {
    id: 'openingsCarried',
    unit: '1',
    inputs: ['vacuumReserve', 'ambient.pressure', 'hall.temperature', 'hose bore and fittings'],
    equation: openingsCarried,
    derive: deriveOpeningsCarried,
    applies: hasOpenings,
  },
  {
    id: 'openingsCarriedAll',
    unit: '1',
    inputs: ['vacuumReserveAll', 'ambient.pressure', 'hall.temperature', 'hose bore and fittings'],
    equation: openingsCarried,
    derive: deriveOpeningsCarriedAll,
    applies: hasOpenings,
  },
  {
    id: 'largestOpeningCarried',
    unit: 'm',
    inputs: ['vacuumReserve', 'ambient.pressure', 'hall.temperature'],
    equation: largestOpeningCarried,
    derive: deriveLargestOpening,
    applies: hasVacuumCapacity,
  },
];
