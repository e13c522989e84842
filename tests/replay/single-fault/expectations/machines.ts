import type { Expectation } from '../fault-expectation';

const next =
  'minutes pass between the stop of a transfer pump and the lost flow: that is the next step, and asks for a load shed';

/** Transfer or circulation pump, and the filter before it. */
export const machineExpectations: readonly Expectation[] = [
  {
    fault: 'pumpTrip',
    sizes: ['small'],
    first: ['PUMP-1'],
    withinS: 5,
    because: 'the feedback falls; it is back after eight seconds, before anything else has moved',
  },
  {
    fault: 'pumpTrip',
    on: ['M', 'H', 'bench'],
    sizes: ['usual', 'large'],
    first: ['PUMP-1'],
    withinS: 5,
    beside: ['FLOW-2'],
    because: `${next}. Tank levels, hot supply and boiling as the hot water comes round follow from it, for minutes after it is back`,
  },
  {
    fault: 'pumpTrip',
    on: ['reservoir'],
    sizes: ['usual', 'large'],
    first: ['PUMP-1'],
    withinS: 5,
    because: 'the pump feeds the loop itself: stop and lost flow are one event',
  },
  {
    fault: 'pumpHeadLoss',
    on: ['M', 'H'],
    sizes: ['small'],
    first: [],
    because: 'the pump has speed left',
  },
  {
    fault: 'pumpHeadLoss',
    on: ['M', 'H'],
    sizes: ['usual', 'large'],
    first: ['TANK-1'],
    withinS: 60,
    because: 'full speed and a falling tank; flow and filter stand until it is empty, and then follow from it',
  },
  {
    fault: 'pumpHeadLoss',
    on: ['bench', 'reservoir'],
    first: [],
    because: 'speed and head are left: a worn pump is judged by day means (PUMP-3)',
  },
  {
    fault: 'filterLoading',
    on: ['M', 'bench', 'reservoir'],
    sizes: ['small'],
    first: [],
    because: 'the pump has speed left, and 1.6 times clean is no limit',
  },
  {
    fault: 'filterLoading',
    on: ['H'],
    sizes: ['small'],
    first: ['TANK-1'],
    withinS: 60,
    because: 'its filter takes 30 kPa clean: the pump comes to full speed, and the tank falls slowly',
  },
  {
    fault: 'filterLoading',
    on: ['M'],
    sizes: ['usual', 'large'],
    first: ['TANK-1'],
    withinS: 60,
    because: 'the first sign is the tank, and its first action is the filter: that it is loaded is told with it',
  },
  {
    fault: 'filterLoading',
    on: ['H'],
    sizes: ['usual'],
    first: ['TANK-1'],
    withinS: 60,
    alerts: ['FIL-1'],
    because: 'the first sign is the tank, and its first action is the filter',
  },
  {
    fault: 'filterLoading',
    on: ['H'],
    sizes: ['large'],
    first: ['TANK-1'],
    withinS: 60,
    because: 'the first sign is the tank, and its first action is the filter',
  },
  {
    fault: 'filterLoading',
    on: ['bench', 'reservoir'],
    sizes: ['usual'],
    first: [],
    alerts: ['FIL-1'],
    because: 'the pump has speed left: an engineer changes the element over within the day',
  },
  {
    fault: 'filterLoading',
    on: ['bench', 'reservoir'],
    sizes: ['large'],
    first: ['FIL-2'],
    because: 'five times clean is beyond its limit, while the pump still copes',
  },
];
