import type { LongExpectation } from './long-expectation';
import { minutes } from './spans';

const carriesOneHose =
  'what is left carries gas load and one open hose, on each of these types; AIR-3 tells when it does not, and the reserve is shown';

/** Air, and the machines that carry it. */
export const longAir: readonly LongExpectation[] = [
  {
    fault: 'slowInLeak',
    on: ['M'],
    sizes: ['usual', 'large'],
    by: ['AIR-2'],
    withinS: 35 * minutes,
    short: true,
    because:
      '20 and 60 free L/min are far above 2 free L/min and three uncertainties of the load; half an hour is judged, and people have hours',
  },
  {
    fault: 'slowInLeak',
    on: ['H', 'reservoir'],
    sizes: ['usual', 'large'],
    by: ['AIR-2'],
    withinS: 35 * minutes,
    because: 'as above',
  },
  {
    fault: 'slowInLeak',
    on: ['bench'],
    sizes: ['usual', 'large'],
    by: ['AIR-2'],
    withinS: 40 * minutes,
    because: '4 and 12 free L/min on the bench, above 2 and what its meter is good for',
  },
  {
    fault: 'slowInLeak',
    on: ['tanks'],
    sizes: ['large'],
    by: ['AIR-2'],
    withinS: 40 * minutes,
    because:
      'change-overs push out 70 free L/min by themselves (flow × pressure), known to a quarter: 60 more are beyond three times half of that',
  },
  {
    fault: 'slowInLeak',
    on: ['tanks'],
    sizes: ['small', 'usual'],
    by: [],
    silentForS: 45 * minutes,
    because:
      'of 70 free L/min that change-overs push out a quarter is not known: 20 more is not told for sure, 5 never',
  },
  {
    fault: 'slowInLeak',
    on: ['M', 'H', 'reservoir'],
    sizes: ['small'],
    by: ['AIR-2'],
    withinS: 40 * minutes,
    because: '5 and 7.5 free L/min are above 2 by more than three times the 3 % of the meter',
  },
  {
    fault: 'slowInLeak',
    on: ['bench'],
    sizes: ['small'],
    by: [],
    silentForS: 45 * minutes,
    because: '1 free L/min is below the limit of 2, where the meter is blind',
  },
  {
    fault: 'vacuumCapacityLoss',
    by: [],
    silentForS: 45 * minutes,
    because:
      'the sources run at their least speed as long as no more air comes: pressure, exhaust and speed stand, so that even 60 % less shows in no reading but at the next opening. Nobody measures the curve; wear is found by a trial with an opening, which a guided test leads through',
  },
  {
    fault: 'sealWaterWarm',
    on: ['M', 'bench', 'tanks', 'reservoir'],
    by: [],
    silentForS: 45 * minutes,
    because: `vapour of seal water at 50 °C is 12 kPa of 32 (IAPWS SR1-86), which takes a quarter of 295 free L/min: 226 are left for a hose of 164; ${carriesOneHose}`,
  },
  {
    fault: 'sealWaterWarm',
    on: ['H'],
    sizes: ['small', 'usual'],
    by: [],
    silentForS: 45 * minutes,
    because: `at 40 °C a tenth of 560 free L/min is gone, and its hose takes 419; ${carriesOneHose}`,
  },
  {
    fault: 'standbyCheckValveLeaks',
    by: [],
    silentForS: 45 * minutes,
    because: 'air that goes round in a circle comes into no loop and past no meter: found by a test of the standby',
  },
  {
    fault: 'trapFloatStuck',
    sizes: ['small'],
    by: [],
    silentForS: 45 * minutes,
    because: 'a trap that is a fifth full takes little capacity',
  },
  {
    fault: 'trapFloatStuck',
    on: ['bench', 'tanks', 'reservoir'],
    sizes: ['usual'],
    by: [],
    silentForS: 45 * minutes,
    because: 'these types have no switch in the trap, and what is left carries their gas load: nothing else moves',
  },
  {
    fault: 'trapFloatStuck',
    on: ['bench', 'reservoir'],
    sizes: ['large'],
    by: [],
    silentForS: 45 * minutes,
    because: 'as above: the gas load of these types is a hundredth of the capacity',
  },
  {
    fault: 'trapFloatStuck',
    on: ['tanks'],
    sizes: ['large'],
    by: ['VSRC-2'],
    withinS: 10 * minutes,
    because:
      'each change-over asks for 70 free L/min: the separator rises with its source full, until the standby that has just started is up. It takes the pressure back: that it had to start, and to look at the trap, is told, and no load is shed',
  },
  {
    fault: 'overEvacuation',
    on: ['bench'],
    sizes: ['small'],
    by: ['SET-1'],
    withinS: minutes,
    short: true,
    because: 'a changed set point is told to the engineer within seconds',
  },
  {
    fault: 'overEvacuation',
    on: ['tanks'],
    sizes: ['small', 'usual'],
    by: ['SET-1'],
    withinS: minutes,
    beside: ['VSRC-2'],
    short: true,
    because:
      'a changed set point is told to the engineer within seconds; that the standby helps to draw down is an alert beside it',
  },
];
