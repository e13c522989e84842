import type { alarmActionRoutes } from '@ebbline/shared/contract/alarm-action-routes';

type Row = (typeof alarmActionRoutes)[number];
type Key = Row extends infer R ? (R extends Row ? `${R['method']} ${R['path']}` : never) : never;

/** What each route that sets alarms aside is for, in one line. */
export const alarmActionRouteTexts: Readonly<Record<Key, { readonly operationId: string; readonly summary: string }>> =
  {
    'get /api/alarms/set-aside': {
      operationId: 'setAside',
      summary: 'Alarms that are not told: shelved, out of service, suppressed by design; why, by whom, until when.',
    },
    'post /api/alarms/acknowledge': {
      operationId: 'acknowledgeMany',
      summary: 'Says "seen" to several alarms; each is recorded by itself, and each answer stands by itself.',
    },
    'post /api/alarms/{id}/shelve': {
      operationId: 'shelve',
      summary: 'Takes an alarm from the list for a while, standing or not. It comes back by itself.',
    },
    'get /api/alarms/findable': {
      operationId: 'findAlarms',
      summary: 'Alarms that this site can have, standing or not, by words: which one is to be set aside.',
    },
    'post /api/alarms/{id}/unshelve': {
      operationId: 'unshelve',
      summary: 'Brings a shelved alarm back before its time; where its condition holds it is told anew.',
    },
    'post /api/alarms/{id}/take-out-of-service': {
      operationId: 'takeOutOfService',
      summary: 'Takes an alarm from the list until a person brings it back; says what watches the plant meanwhile.',
    },
    'post /api/alarms/{id}/return-to-service': {
      operationId: 'returnToService',
      summary: 'Brings back an alarm that is out of service; where its condition holds it is told anew.',
    },
  };
