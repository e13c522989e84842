import type { Expectation } from '../fault-expectation';

const one =
  'all run states fall at once and come back by themselves: one event, whatever follows from it and from the hot water that comes round';
const vent =
  'a bleed that does not open is another thing to do before the tank refills (the supply side goes positive)';

/** Power of one unit, its gateway alive. */
export const powerExpectations: readonly Expectation[] = [
  { fault: 'powerFailure', on: ['M', 'H', 'bench'], ways: ['bleedOpen'], first: ['PUMP-1'], withinS: 5, because: one },
  { fault: 'powerFailure', on: ['reservoir'], first: ['PUMP-1'], withinS: 5, because: one },
  {
    fault: 'powerFailure',
    on: ['M', 'H', 'bench'],
    ways: ['bleedShut'],
    first: ['PUMP-1'],
    withinS: 5,
    beside: ['VENT-1'],
    because: `${one}; ${vent}`,
  },
  {
    fault: 'powerFailure',
    on: ['tanks'],
    ways: ['bleedOpen'],
    first: ['VSRC-1'],
    withinS: 5,
    because: 'such a loop has no pump: its source tells, and the standby that helps as power is back follows from it',
  },
  {
    fault: 'powerFailure',
    on: ['tanks'],
    sizes: ['small'],
    ways: ['bleedShut'],
    first: ['VSRC-1'],
    withinS: 5,
    beside: ['VENT-1'],
    because: vent,
  },
  {
    fault: 'powerFailure',
    on: ['tanks'],
    sizes: ['usual', 'large'],
    ways: ['bleedShut'],
    first: ['VSRC-1'],
    withinS: 5,
    beside: ['FLOW-2', 'VENT-1'],
    because: `${vent}; half a minute later the tank that lets no gas in gives no flow: the next step, more urgent than what began it`,
  },
];
