import type { LongExpectation } from './long-expectation';

const minutes = 60;
const hours = 3600;
/** Means of a day are known from twelve whole hours on. */
const dayMean = 13.5 * hours;

/** Air and the machines that carry it. */
const air: readonly LongExpectation[] = [
  {
    fault: 'slowInLeak',
    on: ['M'],
    sizes: ['usual', 'large'],
    lastsS: 45 * minutes,
    by: ['AIR-2', 'AIR-3'],
    withinS: 40 * minutes,
    short: true,
    because:
      '20 and 60 free L/min are far above 2 free L/min and three uncertainties of the load; half an hour is judged',
  },
  {
    fault: 'slowInLeak',
    on: ['H', 'reservoir'],
    sizes: ['usual', 'large'],
    lastsS: 45 * minutes,
    by: ['AIR-2', 'AIR-3'],
    withinS: 40 * minutes,
    because: 'as above',
  },
  {
    fault: 'slowInLeak',
    on: ['bench', 'tanks'],
    sizes: ['usual', 'large'],
    lastsS: 45 * minutes,
    by: ['AIR-2', 'AIR-3'],
    because:
      '4 and 12 free L/min on the bench, above 2 and what its meter is good for; change-overs of alternating tanks push out 70 free L/min by themselves (flow × pressure), known to a quarter, so that 20 more is not told for sure',
  },
  {
    fault: 'slowInLeak',
    sizes: ['small'],
    lastsS: 45 * minutes,
    by: ['AIR-2'],
    because:
      '5 free L/min, 1 on the bench: a meter of 3 % that is blind below 2 free L/min tells it just so; 1 is below the limit of 2',
  },
  {
    fault: 'vacuumCapacityLoss',
    lastsS: 45 * minutes,
    by: ['AIR-3', 'VSRC-2'],
    because:
      'up to 60 % of the capacity gone, 118 of 295 free L/min left: below one hose of 164, where the curve is not that of a new source, which nobody measures',
  },
  {
    fault: 'sealWaterWarm',
    on: ['M', 'bench', 'tanks', 'reservoir'],
    lastsS: 45 * minutes,
    by: ['AIR-3', 'VSRC-2'],
    because:
      'vapour of seal water at 50 °C is 12 kPa of 32 (IAPWS SR1-86): a quarter of the capacity is gone, and 295 free L/min carry one hose of 164 still',
  },
  {
    fault: 'sealWaterWarm',
    on: ['H'],
    sizes: ['small', 'usual'],
    lastsS: 45 * minutes,
    by: ['AIR-3', 'VSRC-2'],
    because: 'as above; its hose takes 419 of 560 free L/min, so that it comes near',
  },
  {
    fault: 'standbyCheckValveLeaks',
    lastsS: 45 * minutes,
    by: [],
    because: 'air that goes round in a circle comes into no loop and past no meter: found by a test of the standby',
  },
  {
    fault: 'trapFloatStuck',
    sizes: ['small'],
    lastsS: 45 * minutes,
    by: ['AIR-3'],
    because: 'a trap that is a fifth full takes little capacity',
  },
  {
    fault: 'trapFloatStuck',
    on: ['bench', 'tanks', 'reservoir'],
    sizes: ['usual', 'large'],
    lastsS: 45 * minutes,
    by: ['AIR-3', 'VSRC-2', 'AIR-4'],
    because:
      'where the trap tells no level, only capacity against load shows it, once the load asks for it; alternating tanks ask for it at each change-over, and then more comes than is carried',
  },
  {
    fault: 'overEvacuation',
    on: ['bench'],
    sizes: ['small'],
    lastsS: 10 * minutes,
    by: ['SET-1'],
    withinS: 60,
    short: true,
    because: 'a changed set point is told to the engineer within seconds',
  },
  {
    fault: 'overEvacuation',
    on: ['tanks'],
    sizes: ['small', 'usual'],
    lastsS: 10 * minutes,
    by: ['SET-1', 'VSRC-2'],
    withinS: 60,
    short: true,
    because: 'a changed set point is told to the engineer within seconds',
  },
];

/** Heat, flow and the parts that load or wear. */
const heat: readonly LongExpectation[] = [
  {
    fault: 'facilityWarm',
    sizes: ['small'],
    lastsS: 45 * minutes,
    by: ['FAC-2', 'TSUP-1'],
    because: '1.5 K: the valve opens from 50 to 66 %, and the supply is held to 0.1 K',
  },
  {
    fault: 'valveStuck',
    sizes: ['small', 'usual'],
    lastsS: 2 * hours,
    by: ['VALVE-1', 'TSUP-1', 'TSUP-2', 'FAC-2'],
    because: 'told once load or facility water have moved the command by more than 5 % from where it sticks',
  },
  {
    fault: 'exchangerFouled',
    sizes: ['small'],
    lastsS: dayMean,
    by: [],
    because: '85 % of the clean UA is above the limit of 75 %',
  },
  {
    fault: 'exchangerFouled',
    sizes: ['usual', 'large'],
    lastsS: dayMean,
    by: ['HX-1', 'TSUP-1'],
    because:
      '75 % is the limit itself, to the 4 % that UA is known to; 60 % is told by the first mean of a day; with valve and supply at their end sooner',
  },
  {
    fault: 'loadStep',
    on: ['M', 'bench', 'tanks', 'reservoir'],
    lastsS: 30 * minutes,
    by: [],
    because: 'work comes and goes: no fault',
  },
  { fault: 'loadStep', on: ['H'], ways: ['fall'], lastsS: 30 * minutes, by: [], because: 'less heat is no fault' },
  {
    fault: 'loadStep',
    on: ['H'],
    sizes: ['small'],
    ways: ['rise'],
    lastsS: 30 * minutes,
    by: ['BOIL-1'],
    because:
      '99 % of the rated heat: the pump inlet has 2.5 m of 2.1, and comes within its guard only with warm facility water',
  },
  {
    fault: 'pumpHeadLoss',
    on: ['M', 'H'],
    sizes: ['small'],
    lastsS: dayMean,
    by: ['PUMP-3', 'TANK-1'],
    because:
      '8 % of the head are some 5 points of efficiency of the 10 that are told; a tank that falls as well shows it sooner',
  },
  {
    fault: 'pumpHeadLoss',
    on: ['bench', 'reservoir'],
    lastsS: dayMean,
    by: ['PUMP-3', 'FLOW-1'],
    because:
      '8, 20 and 35 % of the head are some 5, 12 and 21 points of efficiency; 10 are told, by a mean of a day, where power and flow of the pump are measured',
  },
  {
    fault: 'filterLoading',
    on: ['M', 'bench', 'reservoir'],
    sizes: ['small'],
    lastsS: 45 * minutes,
    by: [],
    because: '1.6 times clean of the 2 that are told',
  },
  {
    fault: 'filterLoading',
    on: ['bench', 'reservoir'],
    sizes: ['usual'],
    lastsS: 30 * minutes,
    by: ['FIL-1'],
    withinS: 20 * minutes,
    short: true,
    because: 'three times clean is beyond 2 for ten minutes: the engineer changes it within the day',
  },
  {
    fault: 'rackBlocked',
    on: ['M', 'tanks', 'reservoir'],
    sizes: ['small'],
    lastsS: 30 * minutes,
    by: ['FLOW-3'],
    because: 'twice the resistance of its hoses takes 15 to 19 % of a rack’s flow; 20 % are told',
  },
  {
    fault: 'plateBlocked',
    on: ['M', 'H', 'tanks', 'reservoir'],
    lastsS: 2.5 * hours,
    by: ['RTH-1'],
    because:
      'a quarter more of its resistance over an hour, where plate and power are measured; else 0.6 % of the rack’s flow, below 2 % of its meter',
  },
  {
    fault: 'plateResistance',
    lastsS: 2.5 * hours,
    by: ['RTH-1'],
    because: 'half as much again and more, over an hour, where plate and power are measured; else nothing moves',
  },
];

/** Water, and the tanks. */
const water: readonly LongExpectation[] = [
  {
    fault: 'waterLoss',
    ways: ['drain'],
    lastsS: 2 * hours,
    by: ['TANK-3', 'TANK-1'],
    because:
      '0.2 L/min are 24 L in two hours, a tenth of a metre: told once a level has fallen below 60 % of its usual one, or in the loop’s sum',
  },
  {
    fault: 'waterLoss',
    on: ['bench'],
    sizes: ['small'],
    ways: ['tray'],
    lastsS: hours,
    by: ['WATER-1'],
    withinS: 30 * minutes,
    because: 'four millilitres a minute wet the sensor after minutes',
  },
  {
    fault: 'exchangerPinhole',
    lastsS: 2 * hours,
    by: ['TANK-2', 'TANK-4', 'CHEM-1', 'XFER-1'],
    because: '0.5 to 8 L/min: the sum of levels tells over an hour and a quarter, a full separator sooner',
  },
  {
    fault: 'overfill',
    on: ['M', 'H', 'bench'],
    lastsS: 45 * minutes,
    by: ['TANK-2'],
    because: '20 L/min fill the separator’s room of 90 L within minutes, 1 L/min within hours',
  },
  {
    fault: 'overfill',
    on: ['reservoir', 'tanks'],
    sizes: ['small', 'usual'],
    lastsS: 45 * minutes,
    by: ['TANK-2', 'XFER-1'],
    because: 'as above; alternating tanks that are full change over too often',
  },
  {
    fault: 'ventStuck',
    sizes: ['small'],
    lastsS: 30 * minutes,
    by: [],
    because: 'a relief that opens by a fifth lets in what a tank asks for at steady flow',
  },
  {
    fault: 'transferLate',
    sizes: ['small', 'usual'],
    lastsS: 30 * minutes,
    by: [],
    short: true,
    because: 'four to ten seconds of fifty: less than the quarter that is told',
  },
  {
    fault: 'transferFailed',
    sizes: ['small'],
    lastsS: 30 * minutes,
    by: [],
    because: 'half a minute: the change-over comes in time all the same',
  },
];

export const longExpectations: readonly LongExpectation[] = [...air, ...heat, ...water];
