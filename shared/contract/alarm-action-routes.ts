import { broughtBackSchema } from './brought-back';
import {
  acknowledgeManyReplySchema,
  acknowledgeManyRequestSchema,
  bringBackRequestSchema,
  setAsideAlarmSchema,
  setAsideListSchema,
  shelveRequestSchema,
  takeOutOfServiceRequestSchema,
} from './alarm-modes';
import type { RouteRow } from './route-row';

/** Several alarms acknowledged at once; alarms set aside and brought back, one by one. */
export const alarmActionRoutes = [
  {
    method: 'get',
    path: '/api/alarms/set-aside',
    right: 'look',
    reply: setAsideListSchema,
    query: null,
    body: null,
    faults: [],
  },
  {
    method: 'post',
    path: '/api/alarms/acknowledge',
    right: 'acknowledge',
    reply: acknowledgeManyReplySchema,
    query: null,
    body: acknowledgeManyRequestSchema,
    faults: ['ACTOR_DIFFERS'],
  },
  {
    method: 'post',
    path: '/api/alarms/{id}/shelve',
    right: 'shelve',
    reply: setAsideAlarmSchema,
    query: null,
    body: shelveRequestSchema,
    faults: [
      'ACTOR_DIFFERS',
      'ALARM_UNKNOWN',
      'ALARM_SHELVED_ALREADY',
      'ALARM_OUT_OF_SERVICE',
      'SHELVING_TOO_LONG',
      'JOURNAL_UNAVAILABLE',
    ],
  },
  {
    method: 'post',
    path: '/api/alarms/{id}/unshelve',
    right: 'shelve',
    reply: broughtBackSchema,
    query: null,
    body: bringBackRequestSchema,
    faults: ['ACTOR_DIFFERS', 'ALARM_UNKNOWN', 'ALARM_NOT_SHELVED', 'JOURNAL_UNAVAILABLE'],
  },
  {
    method: 'post',
    path: '/api/alarms/{id}/take-out-of-service',
    right: 'outOfService',
    reply: setAsideAlarmSchema,
    query: null,
    body: takeOutOfServiceRequestSchema,
    faults: ['ACTOR_DIFFERS', 'ALARM_UNKNOWN', 'ALARM_OUT_OF_SERVICE', 'PLANNED_END_PAST', 'JOURNAL_UNAVAILABLE'],
  },
  {
    method: 'post',
    path: '/api/alarms/{id}/return-to-service',
    right: 'outOfService',
    reply: broughtBackSchema,
    query: null,
    body: bringBackRequestSchema,
    faults: ['ACTOR_DIFFERS', 'ALARM_UNKNOWN', 'ALARM_NOT_OUT_OF_SERVICE', 'JOURNAL_UNAVAILABLE'],
  },
] as const satisfies readonly RouteRow[];
