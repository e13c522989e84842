import type { Expectation } from '../fault-expectation';

/** One rack or one plate. */
export const rackExpectations: readonly Expectation[] = [
  {
    fault: 'rackBlocked',
    on: ['M', 'tanks', 'reservoir'],
    sizes: ['small'],
    first: [],
    because: 'twice the resistance takes less than a fifth of its flow, as the servers are not all of it',
  },
  {
    fault: 'rackBlocked',
    on: ['M', 'reservoir'],
    sizes: ['usual', 'large'],
    first: ['FLOW-3'],
    withinS: 75,
    where: 'Rack 3',
    because: 'that rack’s flow is low and its return pressure falls: no gas, no level jump',
  },
  {
    fault: 'rackBlocked',
    on: ['H'],
    first: ['FLOW-3'],
    withinS: 75,
    where: 'Rack 3',
    because: 'six racks: twice the resistance takes a fifth of one’s flow',
  },
  {
    fault: 'rackBlocked',
    on: ['tanks'],
    sizes: ['usual'],
    first: ['FLOW-3'],
    withinS: 75,
    where: 'Rack 3',
    because: 'that rack’s flow is low',
  },
  {
    fault: 'rackBlocked',
    on: ['tanks'],
    sizes: ['large'],
    first: ['FLOW-1'],
    withinS: 30,
    beside: ['FLOW-3'],
    because:
      'one of four racks gone is more than 15 % of the loop’s flow, seen at once; a minute later the rack is named',
  },
  {
    fault: 'rackBlocked',
    on: ['bench'],
    sizes: ['small', 'usual'],
    first: ['FLOW-1'],
    withinS: 30,
    because: 'one rack is all there is: the loop’s own flow tells',
  },
  {
    fault: 'rackBlocked',
    on: ['bench'],
    sizes: ['large'],
    first: ['FLOW-2'],
    withinS: 15,
    because: 'one rack is all there is: its flow is gone',
  },
  {
    fault: 'plateBlocked',
    on: ['M', 'H', 'tanks', 'reservoir'],
    first: [],
    because:
      'one plate moves its rack by less than a per cent; the plate is judged by an hour of its resistance (RTH-1)',
  },
  {
    fault: 'plateBlocked',
    on: ['bench'],
    sizes: ['small'],
    first: ['FLOW-1'],
    withinS: 30,
    because: 'one plate is all there is',
  },
  {
    fault: 'plateBlocked',
    on: ['bench'],
    sizes: ['usual', 'large'],
    first: ['FLOW-2'],
    withinS: 30,
    because: 'one plate is all there is: its flow is gone, and what hot water takes of the reserve follows from it',
  },
  {
    fault: 'plateResistance',
    first: [],
    because: 'the same heat over a larger difference: no flow moves, and an hour of it is judged (RTH-1)',
  },
];
