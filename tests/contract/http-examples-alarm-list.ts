import type { alarmListRoutes } from '@ebbline/shared/contract/alarm-list-routes';
import type { RouteKey } from '@ebbline/shared/contract/route-table';
import type { Example } from './http-example';

const authorised = {
  limit: 5000,
  low: null,
  deadband: 1000,
  onDelaySeconds: 10,
  offDelaySeconds: 15,
  reAlarmAfterSeconds: 14_400,
  enabled: true,
  action: 'Site procedure 12.',
};
const running = { ...authorised, limit: 6000 };

const change = {
  id: 'setting-1',
  time: '2031-05-06T07:08:09.250Z',
  actor: 'Ines',
  entry: 'MARGIN-1',
  scope: { kind: 'unit', id: 'N1' },
  old: authorised,
  new: running,
  reason: 'a low is coming',
  link: 'change 2031-17',
};

const listing = {
  time: '2031-05-06T07:08:10.250Z',
  authorisedBy: {
    file: 'alarm-list.yaml',
    version: '2031-1',
    approvedBy: 'Otto',
    approvedOn: '2031-01-31',
    refused: ['alarm-list.yaml:12:7: entries.MARGIN-9: there is no such entry'],
  },
  shareOfPriority1: 0.1,
  configured: { alarms: 942, priority1: 88 },
  entries: [
    {
      entry: 'MARGIN-1',
      title: 'Vacuum margin small',
      judged: 'unit',
      type: 'calculated',
      cause: 'A regulator that drifts.',
      consequence: 'An opening would let water out.',
      actions: [
        { shape: 'a', text: 'Lower the supply set pressure.' },
        { shape: 'b', text: 'Lower the supply set pressure.' },
        { shape: 'c', text: 'Slow the circulation pump.' },
      ],
      confirm: 'Read the gauge.',
      timeToRespondSeconds: 480,
      timeNeededSeconds: 180,
      severity: 'severe',
      priority: 2,
      worse: { severity: 'severe', timeToRespondSeconds: 120, when: 'a permit is open', priority: 1 },
      class: 'vacuum',
      latching: false,
      basis: 'Weather of half a day.',
      designLimit: 'Ambient pressure.',
      offInModes: ['off'],
      suppressedBy: ['MARGIN-2'],
      owner: 'Cooling engineer',
      reviewBy: '2032-01-31',
      changeLink: null,
      unit_of_measure: 'Pa',
      side: 'below',
      hasDeadband: true,
      changeable: true,
      scopes: ['site', 'hall', 'unit'],
      stateDependent: null,
      classTitle: 'Vacuum margin',
      highlyManaged: true,
      configured: 21,
      settings: [
        { scope: { kind: 'site' }, authorised, running: authorised, differs: [] },
        { scope: { kind: 'unit', id: 'N1' }, authorised, running, differs: ['limit'] },
      ],
    },
  ],
};

type Row = (typeof alarmListRoutes)[number];
type Key = Extract<RouteKey, Row extends infer R ? (R extends Row ? `${R['method']} ${R['path']}` : never) : never>;

/** Examples of the list of alarms. */
export const alarmListExamples: Readonly<Record<Key, Example>> = {
  'get /api/alarm-list': { query: { search: 'margin', differing: 'true' }, reply: listing },
  'get /api/alarm-list/changes': { reply: { changes: [{ ...change, approvedBy: 'Otto' }] } },
  'post /api/alarm-list/proposals/{id}': { body: { operator: 'Otto', decision: 'approve' }, reply: change },
  'get /api/alarm-list/audit': {
    reply: {
      time: '2031-05-06T07:08:10.250Z',
      compared: 947,
      findings: [
        {
          entry: 'MARGIN-1',
          scope: { kind: 'unit', id: 'N1' },
          member: 'limit',
          authorised: 5000,
          running: 6000,
          unit_of_measure: 'Pa',
          by: 'change',
          change,
        },
      ],
      refused: [
        {
          ...change,
          id: 'setting-2',
          refused: { code: 'SETTING_STEPS', message: 'At unit N1, which this reaches: …' },
        },
      ],
    },
  },
  'post /api/alarm-list/changes': {
    body: {
      operator: 'Ines',
      entry: 'MARGIN-1',
      scope: { kind: 'unit', id: 'N1' },
      set: { limit: 6000 },
      basedOn: authorised,
      unit_of_measure: 'Pa',
      reason: 'a low is coming',
      link: 'change 2031-17',
    },
    reply: change,
  },
};
