import type { Expectation } from '../fault-expectation';

/**
 * A rise of 40 or 60 % on top of 79 % is 119 or 139 % of the rated heat of type H. By hand: the return stands at 35 + 12 × 1.19 =
 * 49.3 °C, vapour pressure 11.9 kPa (IAPWS SR1-86, from memory), so that the pump's inlet has (32 − 11.9) / 9.7 + 0.45 − 0.25 =
 * 2.27 m of 2.1 m: within its guard. At 139 % it has 2.06 m: crossed. Type M has 24 kPa and more of room.
 */
export const lineAndLoadExpectations: readonly Expectation[] = [
  {
    fault: 'loadStep',
    on: ['M', 'bench', 'tanks', 'reservoir'],
    first: [],
    because: 'work comes and goes: heat follows the chips after the transit time, and no air comes in',
  },
  { fault: 'loadStep', on: ['H'], ways: ['fall'], first: [], because: 'less heat is no fault' },
  { fault: 'loadStep', on: ['H'], sizes: ['small'], ways: ['rise'], first: [], because: '99 % of the rated heat' },
  {
    fault: 'loadStep',
    on: ['H'],
    sizes: ['usual'],
    ways: ['rise'],
    first: ['BOIL-1'],
    because: '119 % of the rated heat brings the pump inlet within its guard',
  },
  {
    fault: 'loadStep',
    on: ['H'],
    sizes: ['large'],
    ways: ['rise'],
    first: ['BOIL-1'],
    beside: ['BOIL-2'],
    because: '139 % crosses that wall: the upper step of the pair, which hides the lower; the reserve follows from it',
  },
  {
    fault: 'connectionLost',
    first: ['COM-1'],
    withinS: 10,
    because:
      'one lost gateway is one alarm, not one for each of its points, and nothing of the plant is told as it comes back',
  },
];
