import type { Alarm, AlarmState } from '@ebbline/shared/contract/alarm';

export const time = '2031-05-06T07:08:09.000Z';
/** Of a unit of its own hall. */
export const alarmOf = (id: string, state: AlarmState = 'unacknowledged', more: Partial<Alarm> = {}): Alarm => ({
  ...{ id, unit: 'm1', hall: 'north', entry: 'WATER-1', title: 'Water found', state, priority: 1 },
  ...{ since: time, stateSince: time, value: null, limit: null, unit_of_measure: null, where: null },
  ...{ cause: 'c', consequence: 'c', action: 'a', timeToRespondSeconds: 60, foldedUnder: null },
  ...{ acknowledgedBy: null, acknowledgedAt: null },
  ...more,
});
