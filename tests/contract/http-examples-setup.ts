import type { RouteKey } from '@ebbline/shared/contract/route-table';
import { reading, type Example } from './http-example';

const demoState = {
  running: true,
  units: [{ id: 'N1', branches: ['r5'] }],
  kinds: [
    {
      id: 'cutServerHose',
      title: 'Server hose cut',
      kind: 'fault',
      about: 'Air comes in at one server of the branch.',
      units: ['N1'],
      needsBranch: true,
      choices: [{ key: 'size', title: 'Size', values: ['small', 'usual', 'large'], usual: 'usual' }],
    },
  ],
  active: [
    {
      id: 'cutServerHose',
      unit: 'N1',
      branch: 'r5',
      forSeconds: 12,
      repaired: false,
      strength: 1,
      keys: { size: 'usual' },
    },
  ],
  refused: null,
};

const permit = {
  id: 'N1:r5:1935817689250',
  unit: 'N1',
  branch: 'r5',
  state: 'open',
  openedBy: 'Ines',
  openedAt: '2031-05-06T07:08:09.250Z',
  until: '2031-05-06T09:00:00.000Z',
  expectedInLeak: 0.0005,
  comment: 'hose of server 4',
  waitsFor: ['branchFlow', 'gasLoad', 'level'],
  closedBy: null,
  closedAt: null,
};

const siteState = {
  file: 'my-hall.yaml',
  loadedAt: '2031-05-06T07:08:09.250Z',
  contentHash: '6b'.repeat(32),
  refused: {
    since: '2031-05-06T07:09:30.500Z',
    faults: [{ line: 12, key: 'units.N1.ratedFlow', message: 'is missing' }],
  },
  warnings: [],
};

/** Examples of what Setup and the lists beside the alarms ask for. */
export const setupExamples = {
  'get /api/units/{unit}/limits': {
    reply: {
      unit: 'N1',
      limits: [
        {
          entry: 'MARGIN-1',
          title: 'Vacuum margin small',
          point: 'vacuumMarginWorst',
          side: 'below',
          limit: 5000,
          unit_of_measure: 'Pa',
        },
      ],
    },
  },
  'get /api/units/{unit}/setup': {
    reply: {
      unit: 'N1',
      time: '2031-05-06T07:08:09.250Z',
      points: [
        {
          reading,
          title: 'Loop flow',
          topic: 'demo/north/N1/telemetry',
          path: ['supply', 'flow'],
          period: 1,
          arriving: 'arriving',
        },
      ],
      notWatched: [{ entry: 'FIL-1', title: 'Filter loaded', lacks: ['Filter pressure drop'] }],
    },
  },
  'get /api/site/state': { reply: siteState },
  'post /api/site/reload': { body: {}, reply: siteState },
  'post /api/site/check': {
    body: { text: 'site: {}' },
    reply: {
      accepted: false,
      summary: null,
      faults: [{ line: 1, key: 'site.id', message: 'is missing' }],
      warnings: [],
    },
  },
  'get /api/alerts': {
    reply: {
      time: '2031-05-06T07:08:09.250Z',
      alerts: [
        {
          id: 'N1:FIL-1',
          unit: 'N1',
          hall: 'north',
          entry: 'FIL-1',
          title: 'Filter is loading',
          since: '2031-05-06T05:00:00.000Z',
          value: 2.1,
          limit: 2,
          unit_of_measure: '1',
          where: null,
          cause: 'Particles in the water.',
          consequence: 'The transfer pump runs out of speed.',
          action: 'Plan a change of the element.',
          detail: null,
        },
      ],
    },
  },
  'get /api/permits': { reply: { time: '2031-05-06T07:08:09.250Z', permits: [permit] } },
  'post /api/permits': {
    body: {
      unit: 'N1',
      branch: 'r5',
      until: '2031-05-06T09:00:00.000Z',
      expectedInLeak: 0.0005,
      operator: 'Ines',
      comment: 'hose of server 4',
    },
    reply: permit,
  },
  'post /api/permits/{id}/close': {
    body: { operator: 'Otto', comment: 'done' },
    reply: { ...permit, state: 'closed', closedBy: 'Otto', closedAt: '2031-05-06T08:40:00.000Z' },
  },
  'get /api/intake/last': {
    query: { topic: 'demo/north/N1/telemetry' },
    reply: {
      topic: 'demo/north/N1/telemetry',
      receivedAt: '2031-05-06T07:08:09.250Z',
      bytes: 17,
      text: '{"supply":"tepid"}',
      hex: null,
      cut: false,
      refusal: { code: 'VALUE_NOT_A_NUMBER', message: 'supply.flow is no number' },
    },
  },
  'get /api/demo/faults': { reply: demoState },
  'post /api/demo/faults': {
    body: {
      id: 'cutServerHose',
      kind: 'fault',
      unit: 'N1',
      branch: 'r5',
      action: 'start',
      keys: { size: 'usual' },
    },
    reply: demoState,
  },
} as const satisfies Partial<Record<RouteKey, Example>>;
