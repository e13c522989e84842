import type { Expectation } from '../fault-expectation';

/** Water that leaves, enters, or is let in. */
export const waterExpectations: readonly Expectation[] = [
  {
    fault: 'waterLoss',
    ways: ['drain'],
    first: [],
    because: 'litres in minutes move no level beyond its slosh; the sum of levels tells over an hour (TANK-3)',
  },
  {
    fault: 'waterLoss',
    on: ['M', 'H', 'tanks', 'reservoir'],
    ways: ['tray'],
    first: ['WATER-1'],
    withinS: 10,
    because: 'water in the tray, wherever it comes from; margin and air stand',
  },
  {
    fault: 'waterLoss',
    on: ['bench'],
    sizes: ['small'],
    ways: ['tray'],
    first: [],
    because: 'four millilitres a minute wet the sensor after more than five minutes',
  },
  {
    fault: 'waterLoss',
    on: ['bench'],
    sizes: ['usual', 'large'],
    ways: ['tray'],
    first: ['WATER-1'],
    withinS: 130,
    because: 'ten to forty millilitres a minute: a tray of so small a unit is wet after one or two',
  },
  {
    fault: 'exchangerPinhole',
    first: [],
    because: 'water comes in, no air: exhaust and margin stand; litres tell over hours (TANK-2, TANK-4)',
  },
  {
    fault: 'overfill',
    on: ['M', 'H', 'bench'],
    first: [],
    because: 'the tanks have room for minutes, and the meter counts it',
  },
  { fault: 'overfill', on: ['reservoir'], sizes: ['small', 'usual'], first: [], because: 'the reservoir has room' },
  {
    fault: 'overfill',
    on: ['reservoir'],
    sizes: ['large'],
    first: ['TANK-2'],
    because: '80 litres in four minutes fill the reservoir; the first look is at the top-up meter',
  },
  { fault: 'overfill', on: ['tanks'], sizes: ['small', 'usual'], first: [], because: 'the tanks have room' },
  {
    fault: 'overfill',
    on: ['tanks'],
    sizes: ['large'],
    first: ['TANK-2'],
    because:
      'a transfer of 140 litres is halved by 70 litres more, and four fifths of that are told: 56 litres are three minutes, and what is usual has been learnt from four transfers only; the first look is at the top-up meter',
  },
];
