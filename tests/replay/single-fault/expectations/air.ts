import type { Expectation } from '../fault-expectation';

const rack3 = { withinS: 8, where: 'Rack 3' } as const;
const opening =
  'gas chokes the rack, lifts its return and pushes water into the separator; margin and supply temperature stay';
const more =
  'more comes in than the standby carries once it is up: the separator rises with its source full, and that asks for a load shed';
const carried = 'the standby that starts is given its run-up, and carries it: no load is shed';
const header =
  'the pump pushes against a rack full of gas, so that its header rises above the room for some seconds: margin never folds under air, and its lower step stands on when the upper has gone';
const headOnReturn =
  'the opening is told first; that all flow goes before the sources are known to be beaten, that water is found and that the margin is gone each ask for something else, and water and margin never fold under air';

/** A line comes open, or a fitting leaks. */
export const airExpectations: readonly Expectation[] = [
  {
    fault: 'cutServerHose',
    on: ['M', 'H', 'tanks'],
    sizes: ['small', 'usual'],
    first: ['AIR-1'],
    ...rack3,
    because: opening,
  },
  { fault: 'cutServerHose', on: ['M'], sizes: ['large'], ways: ['good'], first: ['AIR-1'], ...rack3, because: opening },
  {
    fault: 'cutServerHose',
    on: ['M'],
    sizes: ['large'],
    ways: ['stuckOpen'],
    first: ['AIR-1'],
    ...rack3,
    because: `${opening}; ${carried}`,
  },
  {
    fault: 'cutServerHose',
    on: ['H', 'tanks'],
    sizes: ['large'],
    first: ['AIR-1'],
    ...rack3,
    beside: ['AIR-4'],
    because: `${opening}; ${more}`,
  },
  {
    fault: 'cutServerHose',
    on: ['bench'],
    sizes: ['small', 'usual'],
    first: ['AIR-1'],
    withinS: 7,
    where: 'Rack 1',
    beside: ['FLOW-2'],
    because: 'the bench has one hose: cut, hardly any water flows, and its one chip is to be shed at once',
  },
  {
    fault: 'cutServerHose',
    on: ['bench'],
    sizes: ['large'],
    first: ['AIR-1'],
    withinS: 7,
    where: 'Rack 1',
    beside: ['AIR-4', 'FLOW-2'],
    because: `the bench has one hose: cut, hardly any water flows; ${more}`,
  },
  {
    fault: 'cutServerHose',
    on: ['reservoir'],
    sizes: ['small'],
    ways: ['good'],
    first: ['AIR-1'],
    ...rack3,
    because: opening,
  },
  {
    fault: 'cutServerHose',
    on: ['reservoir'],
    sizes: ['small'],
    ways: ['stuckOpen'],
    first: ['AIR-1'],
    ...rack3,
    beside: ['MARGIN-1', 'MARGIN-2'],
    because: header,
  },
  {
    fault: 'cutServerHose',
    on: ['reservoir'],
    sizes: ['usual', 'large'],
    first: ['AIR-1'],
    ...rack3,
    beside: ['MARGIN-1', 'MARGIN-2'],
    because: header,
  },
  {
    fault: 'cutRackMain',
    on: ['M'],
    sizes: ['small'],
    first: ['AIR-1'],
    ...rack3,
    because: `half a bore is what both sources carry together; ${carried}`,
  },
  {
    fault: 'cutRackMain',
    on: ['H'],
    sizes: ['small'],
    first: ['AIR-1'],
    ...rack3,
    beside: ['AIR-4', 'FLOW-2'],
    again: ['AIR-4'],
    alerts: ['INS-1'],
    because:
      'both sources together just carry it not: after three minutes the separator falls for twenty seconds and rises again, a second run-up; when that is over too the lost flow stands for itself; hot racks drive some return sensors out of their range',
  },
  {
    fault: 'cutRackMain',
    on: ['M', 'H'],
    sizes: ['usual', 'large'],
    first: ['AIR-1'],
    ...rack3,
    beside: ['AIR-4', 'FLOW-2', 'MARGIN-2', 'WATER-1'],
    because: headOnReturn,
  },
  {
    fault: 'cutRackMain',
    on: ['bench'],
    sizes: ['small'],
    first: ['AIR-1'],
    withinS: 7,
    beside: ['FLOW-2'],
    because: 'as a cut hose of the bench: its one source carries it',
  },
  {
    fault: 'cutRackMain',
    on: ['bench'],
    sizes: ['usual', 'large'],
    first: ['AIR-1'],
    withinS: 7,
    beside: ['AIR-4', 'FLOW-2'],
    because: 'more than its source carries; so low a loop spills nothing',
  },
  {
    fault: 'cutRackMain',
    on: ['tanks'],
    sizes: ['small'],
    first: ['AIR-1'],
    ...rack3,
    beside: ['AIR-4', 'FLOW-2'],
    because: `the tanks no longer fill, so that flow goes; ${more}`,
  },
  {
    fault: 'cutRackMain',
    on: ['tanks'],
    sizes: ['usual', 'large'],
    first: ['AIR-1'],
    ...rack3,
    beside: ['AIR-4', 'FLOW-2', 'MARGIN-1', 'MARGIN-2'],
    because: `${headOnReturn}; the margin goes slowly with the usual size, so that its lower step is told first`,
  },
  {
    fault: 'cutRackMain',
    on: ['reservoir'],
    first: ['AIR-1', 'WATER-1'],
    withinS: 5,
    beside: ['AIR-1', 'AIR-4', 'FLOW-2', 'MARGIN-1', 'MARGIN-2', 'WATER-1'],
    because:
      'the pump drives water out of the supply stub at once: water and air are found within a second of each other, either is right first, and each asks for something else',
  },
  {
    fault: 'slowInLeak',
    first: [],
    because: 'it comes slower than a step and moves neither pressure nor flow nor chips; AIR-2 judges half an hour',
  },
];
