import type { FaultRow } from './fault-row';

const sound = {
  points: ['supply.temperature', 'return.temperature'],
  correlation: 0.8,
  by: 'calibration room',
  on: '2026-03-14',
};

const pair = (title: string, more: object, key: string, message: RegExp): FaultRow => [
  title,
  ['templates', 'typeM', 'matchedPairs'],
  [{ ...sound, ...more }],
  `templates.typeM.matchedPairs.0.${key}`,
  message,
];
const accuracy = (title: string, point: string, stated: string, message: RegExp): FaultRow => [
  title,
  ['units', 'm1', 'points', point, 'accuracy'],
  stated,
  `units.m1.points.${point}.accuracy`,
  message,
];

/** Accuracies and the records of matched pairs. */
export const pairFaults: readonly FaultRow[] = [
  pair('a pair without a day', { on: undefined }, 'on', /is missing; say on which day/),
  pair('a pair of nobody', { by: undefined }, 'by', /is missing; say who/),
  pair('a pair calibrated on no day', { on: '2026-02-30' }, 'on', /day of the calendar/),
  pair('errors that are the same', { correlation: 1 }, 'correlation', /0 or more, below 1/),
  pair('errors that go against each other', { correlation: -0.5 }, 'correlation', /0 or more, below 1/),
  pair('a pair of pressures', { points: ['supply.pressure', 'return.temperature'] }, 'points', /is no temperature/),
  pair('a pair of one', { points: ['supply.temperature', 'supply.temperature'] }, 'points', /a pair has two/),
  pair(
    'a pair with a sensor that is not there',
    { points: ['supply.temperature', 'tank.t9.temperature'] },
    'points',
    /tank.t9.temperature is not measured/,
  ),
  accuracy('a coverage factor below 1', 'supply.temperature', 'U = 0.1 K (k = 0.5)', /coverage factor of 1 or more/),
  accuracy('a certificate of nothing', 'supply.temperature', 'U = (k = 2)', /Pt100 A/),
  accuracy('a meter class of a thermometer', 'supply.temperature', 'EN 1434 class 2 of 20 K', /fits flows only/),
  accuracy('a meter class without a flow', 'loop.flow', 'EN 1434 class 2 of 20 kPa', /permanent flow/),
];
