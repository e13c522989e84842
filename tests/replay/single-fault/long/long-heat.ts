import type { LongExpectation } from './long-expectation';
import { hours, minutes } from './spans';

/** Means of a day are known from twelve whole hours on. */
const dayMean = 13.5 * hours;

/** Heat, flow and the parts that load or wear. */
export const longHeat: readonly LongExpectation[] = [
  {
    fault: 'facilityWarm',
    sizes: ['small'],
    by: [],
    silentForS: 45 * minutes,
    because: '1.5 K: the valve opens from 50 to 66 %, the supply is held to 0.1 K, and facility water is within design',
  },
  {
    fault: 'valveStuck',
    sizes: ['small', 'usual'],
    by: ['VALVE-1'],
    withinS: 45 * minutes,
    because:
      'told once load or facility water have moved the command by more than 5 % from where it sticks, before the supply has moved by 2 K; until then nothing is wrong but the valve',
  },
  {
    fault: 'exchangerFouled',
    sizes: ['small'],
    by: [],
    silentForS: dayMean,
    because: '85 % of the clean UA is above the limit of 75 %',
  },
  {
    fault: 'exchangerFouled',
    on: ['M', 'H', 'bench', 'tanks'],
    sizes: ['usual'],
    by: [],
    silentForS: dayMean,
    because: '75 % is the limit itself, and UA is known to 4 %: told where its sensors read low, which these do not',
  },
  {
    fault: 'exchangerFouled',
    on: ['reservoir'],
    sizes: ['usual'],
    by: ['HX-1'],
    withinS: dayMean,
    because: '75 % is the limit itself, and the sensors of this one read low by less than the 4 % that UA is known to',
  },
  {
    fault: 'exchangerFouled',
    sizes: ['large'],
    by: ['HX-1'],
    withinS: dayMean,
    because: '60 % is told by the first mean of a day; capacity is missing on the next hot day, not sooner',
  },
  {
    fault: 'loadStep',
    on: ['M', 'bench', 'tanks', 'reservoir'],
    by: [],
    silentForS: 30 * minutes,
    because: 'work comes and goes: no fault',
  },
  { fault: 'loadStep', on: ['H'], ways: ['fall'], by: [], silentForS: 30 * minutes, because: 'less heat is no fault' },
  {
    fault: 'loadStep',
    on: ['H'],
    sizes: ['small'],
    ways: ['rise'],
    by: [],
    silentForS: 30 * minutes,
    because: '99 % of the rated heat: the pump inlet has 2.5 m of 2.1, and its guard is not reached',
  },
  {
    fault: 'pumpHeadLoss',
    on: ['M', 'H'],
    sizes: ['small'],
    by: [],
    silentForS: dayMean,
    because: '8 % of the head are some 5 points of efficiency of the 10 that are told, and the pump has speed left',
  },
  {
    fault: 'pumpHeadLoss',
    on: ['bench', 'reservoir'],
    by: [],
    silentForS: dayMean,
    because:
      '8, 20 and 35 % of the head are 5, 12 and 21 points of efficiency: ten are told where the site file gives the commissioned efficiency, which it does for types M and H alone; these pumps have speed and head left, so that flow and levels stand',
  },
  {
    fault: 'filterLoading',
    on: ['M'],
    sizes: ['small'],
    by: ['FIL-1'],
    withinS: 15 * minutes,
    because:
      'this filter was at 1.3 times clean before: 1.6 times that is 2.1 of the 2 that are told, as a mean of ten minutes',
  },
  {
    fault: 'filterLoading',
    on: ['bench', 'reservoir'],
    sizes: ['small'],
    by: [],
    silentForS: 45 * minutes,
    because: '1.6 times clean of the 2 that are told',
  },
  {
    fault: 'filterLoading',
    on: ['bench', 'reservoir'],
    sizes: ['usual'],
    by: ['FIL-1'],
    withinS: 10 * minutes,
    beside: ['FIL-2'],
    short: true,
    because:
      'three times clean is beyond 2 as a mean of minutes: the engineer is to change it within the day; it is the limit of 3 itself, so that the one alarm follows once the mean is there',
  },
  {
    fault: 'rackBlocked',
    on: ['M', 'tanks', 'reservoir'],
    sizes: ['small'],
    by: [],
    silentForS: 30 * minutes,
    because: 'twice the resistance of its hoses takes 15 to 19 % of a rack’s flow; 20 % are told',
  },
  {
    fault: 'plateBlocked',
    on: ['M', 'H', 'tanks', 'reservoir'],
    sizes: ['small'],
    by: [],
    silentForS: 2.5 * hours,
    because:
      'by hand: (0.03 + 0.03 × 0.7^−0.8) / 0.06 is 16 % more of the 25 % that are told; 0.3 % of the rack’s flow is below 2 % of its meter',
  },
  {
    fault: 'plateBlocked',
    on: ['M', 'H', 'tanks', 'reservoir'],
    sizes: ['usual', 'large'],
    by: ['RTH-1'],
    withinS: 1.5 * hours,
    because: 'a quarter more of its resistance over an hour, after some minutes until the mean is there',
  },
  {
    fault: 'plateResistance',
    sizes: ['small'],
    by: [],
    silentForS: 2.5 * hours,
    because:
      'half as much again of one half of the resistance is 25 % more: the limit itself, which the mean does not pass',
  },
  {
    fault: 'plateResistance',
    sizes: ['usual'],
    by: ['RTH-1'],
    withinS: 1.5 * hours,
    because: 'half as much again of the whole resistance over an hour, where plate and power are measured',
  },
  {
    fault: 'plateResistance',
    on: ['M', 'H', 'tanks', 'reservoir'],
    sizes: ['large'],
    by: ['RTH-1'],
    withinS: 1.5 * hours,
    because: 'twice the resistance over an hour, where plate and power are measured',
  },
  {
    fault: 'plateResistance',
    on: ['bench'],
    sizes: ['large'],
    by: [],
    silentForS: 2.5 * hours,
    because:
      'twice the resistance brings its one plate to 75 °C, where the hard-wired trip of the heater falls within minutes: without power there is no resistance to judge, and the trip tells by itself',
  },
];
