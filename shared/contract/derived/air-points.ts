import type { PointRow } from '../quantity-kind';

/** Gas, what may come of it, and what the vacuum source has left. */
export const airPoints: readonly PointRow[] = [
  ['gasLoad', 'freeAirFlow', 'm3/s', 'Gas load (free air)'],
  ['inLeak', 'freeAirFlow', 'm3/s', 'In-leak (free air)'],
  ['equivalentHole', 'level', 'm', 'Hole of the in-leak, if it is on the return side (bore)'],
  ['equivalentHoleSupply', 'level', 'm', 'Hole of the in-leak, if it is on the supply side (bore)'],
  ['gasAllowance', 'freeAirFlow', 'm3/s', 'Gas load that is accounted for: baseline, gas budget, permits (free air)'],
  ['vacuumCapacity', 'freeAirFlow', 'm3/s', 'Capacity of one vacuum source at present (free air)'],
  ['vacuumReserve', 'freeAirFlow', 'm3/s', 'Vacuum reserve (free air)'],
  ['vacuumReserveAll', 'freeAirFlow', 'm3/s', 'Vacuum reserve with all sources (free air)'],
  ['openingsCarried', 'ratio', '1', 'Open hoses carried'],
  ['openingsCarriedAll', 'ratio', '1', 'Open hoses carried with all sources'],
  ['largestOpeningCarried', 'level', 'm', 'Largest opening carried'],
];
