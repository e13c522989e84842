import type { FaultRow } from './fault-row';

const typeM = (...keys: readonly (string | number)[]) => ['templates', 'typeM', ...keys];
const key = (...keys: readonly (string | number)[]) => `templates.typeM.${keys.join('.')}`;
const record = (more: object) => ({ by: 'Commissioning', on: '2026-03-14', ...more });

const commissioning = (title: string, more: object, at: readonly string[], message: RegExp): FaultRow => [
  title,
  typeM('commissioning'),
  record(more),
  key('commissioning', ...at),
  message,
];

/** Volumes, levels, temperatures, commissioning records. */
export const figureFaults: readonly FaultRow[] = [
  commissioning('a record without a day', { on: undefined }, ['on'], /is missing; say on which day/),
  commissioning('a record of nobody', { by: undefined }, ['by'], /is missing; say who/),
  // RFC 3339 section 5.7: February has 29 days in leap years only; 2100 is none.
  commissioning('29 February 2026', { on: '2026-02-29' }, ['on'], /day of the calendar/),
  commissioning('29 February 2100', { on: '2100-02-29' }, ['on'], /day of the calendar/),
  commissioning('a day in another order', { on: '14.03.2026' }, ['on'], /day of the calendar/),
  commissioning(
    'a loop that loses less than its nodes',
    { loop: { loss: '11.9 kPa' } },
    ['loop', 'loss'],
    /nodes on supply and return together \(12.0 kPa\)/,
  ),
  commissioning(
    'a loss that falls with flow',
    { loop: { loss: '40 kPa', exponent: -2 } },
    ['loop', 'exponent'],
    /expected 1 to 2.2/,
  ),
  commissioning(
    'a UA without its flows',
    { exchanger: { ua: '48000 W/K', loopFlow: '5.7 kg/s' } },
    ['exchanger', 'facilityFlow'],
    /is missing; a UA holds at its two mass flows/,
  ),
  commissioning('a pump of 120 %', { pumpEfficiency: '120 %' }, ['pumpEfficiency'], /more than 0, at most 1/),
  commissioning('a negative gas load', { gasLoad: '-1 free L/min' }, ['gasLoad'], /0 or more/),
  commissioning(
    'a part larger than the whole',
    { plate: { resistance: '0.06 K/W', fixed: '0.07 K/W' } },
    ['plate', 'fixed'],
    /is a part of it/,
  ),
  ['a volume of nothing', typeM('volumes'), { water: '0 L' }, key('volumes', 'water'), /more than 0/],
  [
    'more water on the way than there is',
    typeM('volumes'),
    { water: '200 L', supplyToReturn: '280 L' },
    key('volumes', 'supplyToReturn'),
    /more than all water/,
  ],
  [
    'water behind the plates of a way that is not stated',
    typeM('transit'),
    { platesToReturn: '140 L' },
    key('transit', 'platesToReturn'),
    /part of volumes.supplyToReturn, which is missing/,
  ],
  ['heat stored below nothing', typeM('transit'), { storedHeat: '-1 kJ/K' }, key('transit', 'storedHeat'), /0 or more/],
  ['a sensor ahead of time', typeM('transit'), { sensorLag: '-5 s' }, key('transit', 'sensorLag'), /0 or more/],
  ['a plate ahead of time', typeM('transit'), { plateLag: '-5 s' }, key('transit', 'plateLag'), /0 or more/],
  [
    'a wetted place of a branch that is not there',
    typeM('nodes', 'topReturn', 'branch'),
    'r99',
    key('nodes', 'topReturn', 'branch'),
    /there is no branch "r99"/,
  ],
  [
    'more room for water than for gas',
    typeM('volumes'),
    { separatorGas: '80 L', separatorRoom: '90 L' },
    key('volumes', 'separatorRoom'),
    /which it is a part of/,
  ],
  [
    'a level above the tank',
    typeM('tanks'),
    { supplyHeight: '0.4 m', supplyUsualLevel: '50 cm' },
    key('tanks', 'supplyUsualLevel'),
    /above the tank's height of 0.4 m/,
  ],
  [
    'a level that its sensor can not tell',
    typeM('tanks'),
    { supplyUsualLevel: '0.9 m' },
    key('tanks', 'supplyUsualLevel'),
    /outside what supplyTank.level can tell \(0.1 to 0.8 m\)/,
  ],
  [
    'a supply class below the set point',
    typeM('supplyClassLimit'),
    '30 °C',
    key('supplyClassLimit'),
    /more than supplySetPoint \(35 °C\)/,
  ],
  ['a chip limit below the supply', typeM('plateLimit'), '35 °C', key('plateLimit'), /more than supplySetPoint/],
  [
    'facility water that can not cool',
    typeM('facilityDesignSupply'),
    '36 °C',
    key('facilityDesignSupply'),
    /heat goes from warm to cold/,
  ],
  ['fans without a figure', typeM('fanPath'), {}, key('fanPath', 'resistance'), /is missing/],
  [
    'frozen seal water',
    typeM('vacuumSource', 'sealWaterTemperature'),
    '-5 °C',
    key('vacuumSource', 'sealWaterTemperature'),
    /liquid seal water/,
  ],
  ['a sound period of no day', typeM('knownGood'), {}, key('knownGood', 'from'), /day of the calendar/],
  [
    'an hour to learn from',
    typeM('knownGood'),
    { from: '2026-03-14', hours: 1 },
    key('knownGood', 'hours'),
    /expected 4 to 720/,
  ],
  ['a heat capacity of nothing', typeM('plateHeatCapacity'), '0 J/K', key('plateHeatCapacity'), /more than 0/],
];
