import type { alarmActionRoutes } from '@ebbline/shared/contract/alarm-action-routes';
import type { Example } from './http-example';

type Row = (typeof alarmActionRoutes)[number];
type Key = Row extends infer R ? (R extends Row ? `${R['method']} ${R['path']}` : never) : never;

const shelved = {
  id: 'N1:FIL-1',
  unit: 'N1',
  hall: 'north',
  entry: 'FIL-1',
  title: 'Filter is loading',
  where: null,
  mode: 'shelved',
  state: 'acknowledged',
  active: true,
  priority: 3,
  since: '2031-05-06T07:00:00.000Z',
  until: '2031-05-06T09:00:00.000Z',
  by: 'Ines',
  reason: 'the new element comes at noon',
  interimMeasures: null,
};

/** One example of every body that sets alarms aside or brings them back, written by hand. */
export const setAsideExamples: Readonly<Record<Key, Example>> = {
  'get /api/alarms/set-aside': {
    reply: {
      time: '2031-05-06T07:08:09.250Z',
      alarms: [
        shelved,
        {
          ...shelved,
          id: 'N2:HX-1',
          unit: 'N2',
          entry: 'HX-1',
          title: 'Exchanger is fouled',
          mode: 'suppressedByDesign',
          state: 'normal',
          active: false,
          until: null,
          by: null,
          reason: 'by design: this alarm is off while the unit is in mode off',
        },
      ],
    },
  },
  'get /api/alarms/findable': {
    query: { search: 'flow-3 N1' },
    reply: {
      time: '2031-05-06T07:08:09.250Z',
      alarms: [
        {
          id: 'N1:FLOW-3:r2',
          unit: 'N1',
          hall: 'north',
          entry: 'FLOW-3',
          title: 'Flow of a branch is low',
          where: 'Rack 2',
          mode: 'inService',
          active: false,
          priority: 2,
          longestShelvingMinutes: 480,
        },
      ],
      more: false,
    },
  },
  'post /api/alarms/acknowledge': {
    body: { operator: 'Ines', comment: 'all one event', alarms: ['N1:AIR-1', 'N1:FLOW-1'] },
    reply: {
      answers: [
        { id: 'N1:AIR-1', done: true, code: null, message: null },
        { id: 'N1:FLOW-1', done: false, code: 'ALARM_UNKNOWN', message: 'no alarm N1:FLOW-1 stands' },
      ],
    },
  },
  'post /api/alarms/{id}/shelve': {
    body: { operator: 'Ines', reason: 'the new element comes at noon', minutes: 120 },
    reply: shelved,
  },
  'post /api/alarms/{id}/unshelve': {
    body: { operator: 'Ines', comment: 'element changed' },
    reply: { id: 'N1:FIL-1', mode: 'inService', state: 'unacknowledged', active: true },
  },
  'post /api/alarms/{id}/take-out-of-service': {
    body: {
      operator: 'Otto',
      reason: 'sensor is sent in for calibration',
      interimMeasures: 'round every two hours, gauge at the tank',
      plannedEnd: '2031-05-08T12:00:00.000Z',
    },
    reply: {
      ...shelved,
      mode: 'outOfService',
      by: 'Otto',
      until: '2031-05-08T12:00:00.000Z',
      reason: 'sensor is sent in for calibration',
      interimMeasures: 'round every two hours, gauge at the tank',
    },
  },
  'post /api/alarms/{id}/return-to-service': {
    body: { operator: 'Otto', comment: '' },
    reply: { id: 'N1:FIL-1', mode: 'inService', state: 'normal', active: false },
  },
};
