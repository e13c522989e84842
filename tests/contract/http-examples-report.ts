import type { RouteKey } from '@ebbline/shared/contract/route-table';
import type { Example } from './http-example';
import { noteExamples } from './http-examples-notes';
import { performanceExamples } from './http-examples-performance';
import { waterExamples } from './http-examples-water';

const line = {
  id: 'N1:AIR-1',
  entry: 'AIR-1',
  title: 'Air is being drawn in',
  unit: 'N1',
  hall: 'north',
  priority: 1,
  state: 'acknowledged',
  where: 'r5',
  since: '2031-05-06T07:08:09.000Z',
} as const;
const first = {
  ...line,
  detail: 'Rack r5.',
  acknowledgedBy: 'Ines',
  acknowledgedAt: '2031-05-06T07:09:30.500Z',
} as const;
const smallest = {
  unit: 'N1',
  point: 'vacuumMarginWorst',
  value: 4180,
  unit_of_measure: 'Pa',
  at: '2031-05-06T07:08:00.000Z',
  bucketSeconds: 60,
  where: 'floorSupply',
  expandedUncertainty: 800,
  share: 0.98,
};
const performance = performanceExamples['get /api/alarms/performance'].reply;

/** Body of the report of a shift. */
export const reportExamples = {
  'get /api/report': {
    query: { hall: 'north', from: '2031-05-06T04:00:00Z', to: '2031-05-06T12:00:00Z' },
    reply: {
      site: 'Quillmere',
      hall: 'north',
      timeZone: 'Europe/Oslo',
      from: '2031-05-06T04:00:00.000Z',
      to: '2031-05-06T12:00:00.000Z',
      until: '2031-05-06T12:00:00.000Z',
      madeAt: '2031-05-06T12:00:07.000Z',
      madeBy: 'Ines',
      incomplete: ['Heat and energy: they are being added up; ask again.'],
      handovers: [noteExamples['post /api/handovers/{id}/take'].reply],
      standing: [{ first, followed: [{ ...first, id: 'N1:FLOW-3', acknowledgedBy: null, acknowledgedAt: null }] }],
      setAside: [
        {
          ...line,
          mode: 'outOfService',
          active: false,
          until: null,
          by: 'Ada',
          reason: 'meter is out',
          interimMeasures: 'gauge read each hour',
        },
      ],
      alerts: [
        {
          id: 'N1:FIL-1',
          entry: 'FIL-1',
          title: 'Filter loads',
          unit: 'N1',
          hall: 'north',
          where: null,
          detail: null,
          since: line.since,
        },
      ],
      permits: [
        {
          id: 'N1-7',
          unit: 'N1',
          branch: 'r5',
          openedBy: 'Ines',
          openedAt: line.since,
          until: '2031-05-06T09:00:00.000Z',
          overdue: true,
          expectedInLeak: 0.0005,
          comment: 'hose of server 4',
        },
      ],
      lineUp: [
        {
          unit: 'N1',
          offNormal: ['no standby vacuum source available: one is alone'],
          unknown: ['facility valve'],
          notMeasured: ['vacuum trap'],
          asUsual: 11,
        },
      ],
      smallestMargin: smallest,
      smallestReserve: { ...smallest, point: 'vacuumReserve', value: 0.004, unit_of_measure: 'm3/s', where: null },
      topUp: [
        {
          loop: 'L1',
          name: 'Loop 1',
          units: ['N1'],
          volume: 0.0065,
          expandedUncertainty: 0.00015,
          from: '2031-05-06T04:00:00.000Z',
          to: '2031-05-06T12:00:00.000Z',
          notes: [],
        },
      ],
      waterByHand: [
        {
          unit: 'N1',
          point: 'water.copper.hand',
          title: 'Copper',
          value: 0.00005,
          unit_of_measure: 'kg/m3',
          takenAt: '2031-05-06T06:00:00.000Z',
          ageSeconds: 21_600,
          by: 'Ines',
          method: 'laboratory',
          note: 'sheet 12',
        },
      ],
      log: [
        {
          unit: null,
          hall: 'north',
          point: 'ambient.pressure',
          unit_of_measure: 'Pa',
          least: 101_100,
          mean: 101_250,
          most: 101_400,
          last: 101_390,
          lastAt: '2031-05-06T11:59:00.000Z',
          share: 1,
        },
      ],
      changes: [
        {
          sequence: 88,
          at: line.since,
          kind: 'hand',
          unit: 'N1',
          hall: null,
          what: 'Copper by hand, sample of 2031-05-06 08:00',
          point: 'water.copper.hand',
          value: 0.00005,
          unit_of_measure: 'kg/m3',
          by: 'Ines',
        },
      ],
      notes: [noteExamples['post /api/notes'].reply],
      tests: [{ sequence: 91, at: line.since, unit: 'N1', what: 'Tightness test completed, passes', by: null }],
      floods: [...performance.floods],
      gaps: [{ from: '2031-05-06T08:00:00.000Z', to: '2031-05-06T08:02:00.000Z' }],
      energy: waterExamples['get /api/energy'].reply,
      performance,
    },
  },
} as const satisfies Partial<Record<RouteKey, Example>>;
