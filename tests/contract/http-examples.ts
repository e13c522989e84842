import type { RouteKey } from '@ebbline/shared/contract/route-table';
import { alarmListExamples } from './http-examples-alarm-list';
import { waterExamples } from './http-examples-water';
import { pastExamples } from './http-examples-past';
import { peopleExamples } from './http-examples-people';
import { setAsideExamples } from './http-examples-set-aside';
import { setupExamples } from './http-examples-setup';
import { guidedExamples } from './http-examples-guided';
import { tightnessExamples } from './http-examples-tightness';
import { performanceExamples } from './http-examples-performance';
import { trendExamples } from './http-examples-trends';
import { mappingExamples } from './http-examples-mapping';
import { noteExamples } from './http-examples-notes';
import { reportExamples } from './http-examples-report';
import { limitTrialExamples } from './http-examples-limit-trial';
import { neverReceived as never, reading, type Example, worstMargin } from './http-example';

const lastMinuteOnly = (pa: number): (number | null)[] => [...Array<null>(59).fill(null), pa];

const alarm = {
  id: 'N1:AIR-1',
  unit: 'N1',
  hall: 'north',
  entry: 'AIR-1',
  title: 'Air is being drawn in',
  state: 'acknowledged',
  priority: 1,
  since: '2031-05-06T07:08:09.000Z',
  stateSince: '2031-05-06T07:09:30.500Z',
  value: 0.0021,
  limit: 0.0005,
  unit_of_measure: 'm3/s',
  where: 'r5',
  cause: 'A hose or a fitting below ambient pressure is open.',
  consequence: 'Air goes in; no water comes out while every wetted point stays below ambient.',
  action: 'Find the rack that is named; close its valves.',
  timeToRespondSeconds: 300,
  acknowledgedBy: 'Ines',
  acknowledgedAt: '2031-05-06T07:09:30.500Z',
  foldedUnder: null,
};

const transition = {
  sequence: 1,
  time: '2031-05-06T07:08:14.020Z',
  sourceTime: '2031-05-06T07:08:14.000Z',
  kind: 'transition',
  alarm: 'N1:AIR-1',
  unit: 'N1',
  entry: 'AIR-1',
  from: 'normal',
  to: 'unacknowledged',
  priority: 1,
  value: 0.0021,
  limit: 0.0005,
  unit_of_measure: 'm3/s',
  where: 'r5',
  actor: null,
  station: null,
  reason: null,
  previousHash: '0'.repeat(64),
  hash: '6b'.repeat(32),
};

/** One example of every body that crosses the HTTP border, written by hand. */
export const httpExamples: Readonly<Record<RouteKey, Example>> = {
  ...peopleExamples,
  ...pastExamples,
  'get /api/health': {
    reply: {
      status: 'degraded',
      reasons: [
        {
          code: 'BROKER_LOST',
          message: 'The broker at 127.0.0.1:1884 is not reached; it is tried again.',
          action: 'See that it runs.',
        },
      ],
      clock: { kind: 'wall', now: '2031-05-06T07:08:09.250Z' },
      broker: { state: 'lost', address: '127.0.0.1:1884', embedded: true, note: 'port 1883 was taken, 1884 is used' },
      lastSampleAge: 12.4,
      version: '0.1.0',
    },
  },
  'get /api/health/alive': { reply: { status: 'alive' } },
  'get /api/health/ready': { reply: { status: 'ready' } },
  'get /api/site': {
    reply: {
      id: 'demo',
      name: 'Demo site',
      timeZone: 'Europe/Oslo',
      altitude: 120,
      demo: true,
      halls: [{ id: 'north', name: 'North hall', units: ['N1'] }],
      loops: [{ id: 'N1', name: 'Unit N1', units: ['N1'], unitsNeeded: 1 }],
      units: [
        {
          id: 'N1',
          hall: 'north',
          name: 'Unit N1',
          shape: 'a',
          gateway: 'north-a',
          branches: [{ id: 'r5', name: 'Rack 5', ratedFlow: 0.00072 }],
          plates: [{ id: 'p1', name: 'Chip 1', branch: null }],
          servers: [],
          tanks: [],
          loop: 'N1',
          nodes: [{ id: 'floorSupply', name: 'Supply main under the floor', main: 'supply', elevation: -0.5 }],
        },
      ],
      entryTitles: { 'MARGIN-1': 'Vacuum margin small' },
    },
  },
  'get /api/units': {
    reply: {
      units: [
        {
          id: 'N1',
          hall: 'north',
          name: 'Unit N1',
          mode: 'running',
          modeKnown: false,
          worstPriority: 1,
          standingAlarms: 2,
          age: 0.4,
        },
        {
          id: 'N2',
          hall: 'north',
          name: 'Unit N2',
          mode: 'off',
          modeKnown: true,
          worstPriority: null,
          standingAlarms: 0,
          age: null,
        },
      ],
    },
  },
  'get /api/units/{unit}/points': {
    reply: { unit: 'N1', time: '2031-05-06T07:08:09.650Z', mode: 'running', points: [reading, worstMargin, never] },
  },
  'get /api/units/{unit}/points/{point}/explanation': {
    reply: {
      unit: 'N1',
      reading: { ...reading, id: 'massFlow', kind: 'derived', value: 5.73, unit: 'kg/s', expandedUncertainty: 0.033 },
      formula: 'q_m = ρ(T)·q_V',
      source: 'mass balance',
      inputs: [reading],
      siteFigures: [{ name: 'ratedFlow', value: 0.0057667, unitOfMeasure: 'm3/s' }],
      budget: [
        { from: 'loop.flow', contribution: 0.0165, share: 1.0625 },
        { from: 'loop.flow, supply.temperature', contribution: -0.004, share: -0.0625 },
        { from: 'supply.temperature', contribution: null, share: null },
      ],
      standardUncertainty: 0.016,
      coverageFactor: 2,
      degreesOfFreedom: null,
    },
  },
  'get /api/halls/{hall}/trails': {
    reply: {
      hall: 'north',
      minute: '2031-05-06T07:08:00.000Z',
      trails: [{ unit: 'N1', lowestPa: lastMinuteOnly(32_000), highestPa: lastMinuteOnly(88_000) }],
    },
  },
  'get /api/halls/{hall}/points/{point}/explanation': {
    reply: {
      unit: 'north',
      reading: { ...reading, id: 'heatRemoved', kind: 'derived', value: 410_000, unit: 'W', expandedUncertainty: 5000 },
      formula: 'Q = Σ Q of the units whose heat is known',
      source: 'sum',
      inputs: [
        { ...reading, id: 'heatRemoved', kind: 'derived', value: 205_000, unit: 'W', ofUnit: 'N1' },
        { ...reading, id: 'heatRemoved', kind: 'derived', value: 205_000, unit: 'W', ofUnit: 'N2' },
      ],
      siteFigures: [],
      budget: [
        { from: 'N1:heatRemoved', contribution: 1500, share: 0.36 },
        { from: 'N2:heatRemoved', contribution: 2000, share: 0.64 },
      ],
      standardUncertainty: 2500,
      coverageFactor: 2,
      degreesOfFreedom: null,
    },
  },
  'get /api/history': {
    query: {
      unit: 'N1',
      point: 'loop.flow',
      from: '2031-05-06T07:00:00Z',
      to: '2031-05-06T07:00:02.500Z',
      buckets: '3',
    },
    reply: {
      unit: 'N1',
      point: 'loop.flow',
      unit_of_measure: 'm3/s',
      bucketMs: 834,
      resolution: 'second',
      start: ['2031-05-06T07:00:00.000Z', '2031-05-06T07:00:00.834Z', '2031-05-06T07:00:01.668Z'],
      min: [0.0057, null, 0.0058],
      mean: [0.0057, null, 0.0058],
      max: [0.0057, null, 0.0058],
      count: [1, 0, 1],
    },
  },
  'get /api/alarms': {
    reply: { time: '2031-05-06T07:09:31.000Z', alarms: [alarm, { ...alarm, id: 'N1:MARGIN-1', recorded: false }] },
  },
  'get /api/alarms/journal': {
    query: { from: '2031-05-06T00:00:00Z', to: '2031-05-07T00:00:00Z', after: '0' },
    reply: {
      rows: [
        transition,
        {
          ...transition,
          sequence: 2,
          kind: 'action',
          from: 'unacknowledged',
          to: 'acknowledged',
          actor: 'Ines',
          station: '127.0.0.1',
          reason: 'on my way',
        },
      ],
      next: null,
    },
  },
  'post /api/alarms/{id}/acknowledge': { body: { operator: 'Ines', comment: 'on my way' }, reply: alarm },
  ...setAsideExamples,
  ...setupExamples,
  ...tightnessExamples,
  ...guidedExamples,
  ...performanceExamples,
  ...trendExamples,
  ...mappingExamples,
  ...noteExamples,
  ...reportExamples,
  ...limitTrialExamples,
  ...alarmListExamples,
  ...waterExamples,
  'get /api/intake': {
    reply: {
      messages: 31,
      samples: 1180,
      late: 3,
      repeated: 80,
      retained: 2,
      topics: [{ topic: 'demo/north/N1/telemetry', messages: 30, refused: 1 }],
      otherTopics: { messages: 1, refused: 1 },
      refusals: [
        {
          code: 'PAYLOAD_NOT_JSON',
          count: 1,
          example: {
            topic: 'demo/north/N1/telemetry',
            message: 'demo/north/N1/telemetry: the payload is no JSON object; send one as the site file says',
            payloadStart: '{"time":',
            time: '2031-05-06T07:08:09.250Z',
          },
        },
      ],
    },
  },
};

/** RFC 9457, with a member of our own. */
export const problemExample = {
  type: 'urn:ebbline:problem:ALARM_ALREADY_ACKNOWLEDGED',
  title: 'Already acknowledged',
  status: 409,
  detail: 'Ines acknowledged this alarm at 2031-05-06T07:09:30.500Z.',
  instance: '/api/alarms/N1:AIR-1/acknowledge',
  code: 'ALARM_ALREADY_ACKNOWLEDGED',
  acknowledgedBy: 'Ines',
  acknowledgedAt: '2031-05-06T07:09:30.500Z',
};
