import type { Expectation } from '../fault-expectation';

/** The vacuum source and what it is told. */
export const vacuumExpectations: readonly Expectation[] = [
  {
    fault: 'vacuumSourceDead',
    on: ['M', 'H', 'reservoir'],
    first: ['VSRC-1'],
    withinS: 5,
    because:
      'the feedback is gone; whether the standby runs, or none is there, is told with it. The separator rises by tenths of a kilopascal a minute',
  },
  {
    fault: 'vacuumSourceDead',
    on: ['bench', 'tanks'],
    sizes: ['small', 'usual'],
    first: ['VSRC-1'],
    withinS: 5,
    because: 'the feedback is gone; whether the standby runs, or none is there, is told with it',
  },
  {
    fault: 'vacuumSourceDead',
    on: ['bench'],
    sizes: ['large'],
    first: ['VSRC-1'],
    withinS: 5,
    beside: ['FLOW-2', 'MARGIN-1', 'MARGIN-2'],
    because:
      'with 15 litres of gas room it is at ambient within two minutes: that the flow goes and then the margin are the next steps, each with another thing to do',
  },
  {
    fault: 'vacuumSourceDead',
    on: ['tanks'],
    sizes: ['large'],
    first: ['VSRC-1'],
    withinS: 5,
    beside: ['FLOW-2'],
    because: 'four minutes later the tanks no longer fill: the lost flow is the next step',
  },
  {
    fault: 'vacuumCapacityLoss',
    first: [],
    because:
      'what is left carries the load and one hose, or is judged by what the source does over days: exhaust and margin stand',
  },
  {
    fault: 'sealWaterWarm',
    on: ['M', 'bench', 'tanks', 'reservoir'],
    first: [],
    because:
      'the reserve shrinks over minutes and still carries one hose, or has not come below it within five minutes',
  },
  {
    fault: 'sealWaterWarm',
    on: ['H'],
    sizes: ['small', 'usual'],
    first: [],
    because: 'the reserve still carries one hose',
  },
  {
    fault: 'sealWaterWarm',
    on: ['H'],
    sizes: ['large'],
    first: ['AIR-3'],
    because: '25 K warmer seal water takes the reserve below one hose; the first action names the seal water',
  },
  {
    fault: 'standbyCheckValveLeaks',
    first: [],
    because: 'air that goes round in a circle comes into no loop: exhaust, margin and flow stand',
  },
  {
    fault: 'trapFloatStuck',
    sizes: ['small'],
    first: [],
    because: 'a trap that is a fifth full takes little capacity',
  },
  {
    fault: 'trapFloatStuck',
    on: ['M', 'H'],
    sizes: ['usual', 'large'],
    first: ['AIR-3'],
    because: 'capacity down, exhaust not up: the next opening is not carried; nobody is sent to look for a leak',
  },
  {
    fault: 'trapFloatStuck',
    on: ['bench', 'tanks', 'reservoir'],
    sizes: ['usual', 'large'],
    first: [],
    because: 'without a level or a speed that tells it, the reserve has no other sign within five minutes',
  },
  {
    fault: 'overEvacuation',
    on: ['M', 'H', 'reservoir'],
    first: ['BOIL-2'],
    withinS: 15,
    beside: ['BOIL-1'],
    alerts: ['SET-1', 'VSRC-2'],
    because:
      'the pump inlet is the nearest wall, 4 kPa below the set point, and stays near when it is crossed no more; that the set point was changed, and that the standby helps to draw down, is told to the engineer. Empty tank, lost flow and small reserve follow from the pump that cavitates',
  },
  {
    fault: 'overEvacuation',
    on: ['bench'],
    sizes: ['small'],
    first: [],
    alerts: ['SET-1'],
    because: 'from 45 kPa it is far to any wall: a changed set point, no more',
  },
  {
    fault: 'overEvacuation',
    on: ['bench'],
    sizes: ['usual'],
    first: ['AIR-3'],
    alerts: ['SET-1'],
    because: 'at 28 kPa the small source carries no open hose: that is so, and the changed set point stands beside it',
  },
  {
    fault: 'overEvacuation',
    on: ['bench'],
    sizes: ['large'],
    first: ['BOIL-2'],
    withinS: 15,
    alerts: ['SET-1'],
    because: 'at 21 kPa its pump cavitates',
  },
  {
    fault: 'overEvacuation',
    on: ['tanks'],
    sizes: ['small', 'usual'],
    first: [],
    alerts: ['SET-1', 'VSRC-2'],
    because: 'no pump inlet, and the return boils at 15 kPa only: a changed set point',
  },
  {
    fault: 'overEvacuation',
    on: ['tanks'],
    sizes: ['large'],
    first: ['BOIL-1'],
    alerts: ['SET-1', 'VSRC-2'],
    because: 'the top of the return comes within its guard; the small reserve follows from the same set point',
  },
];
