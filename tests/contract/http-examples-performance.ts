import type { RouteKey } from '@ebbline/shared/contract/route-table';
import type { Example } from './http-example';

const airIn = { alarm: 'N1:AIR-1', entry: 'AIR-1', title: 'Air is being drawn in', unit: 'N1' };
const swinging = { alarm: 'N2:DEW-1', entry: 'DEW-1', title: 'Near the dew point', unit: 'N2' };
const spread = { priority: 1, count: 2, medianSeconds: 41.5, p90Seconds: 60 };

export const performanceExamples = {
  'get /api/alarms/performance': {
    query: { from: '2031-05-01T00:00:00.000Z', to: '2031-05-31T00:00:00.000Z', hall: 'north' },
    reply: {
      from: '2031-05-01T00:00:00.000Z',
      to: '2031-05-31T00:00:00.000Z',
      hall: 'north',
      days: 30,
      enough: true,
      annunciations: 90,
      figures: [
        {
          id: 'steadyRate',
          title: 'Steady rate, outside floods',
          value: 0.02,
          unit: 'in 10 min',
          acceptable: 1,
          limit: 2,
          verdict: 'within',
          band: 'acceptable',
          source: 'EEMUA 191',
        },
        {
          id: 'tenMostFrequentShare',
          title: 'Share of the ten most frequent alarms in all annunciations',
          value: null,
          unit: '%',
          acceptable: 1,
          limit: 5,
          verdict: 'nothing',
          band: null,
          source: 'ANSI/ISA-18.2-2016',
        },
      ],
      mix: [{ priority: 1, annunciations: 4, share: 4.4, target: 5 }],
      mostFrequent: [{ ...swinging, annunciations: 30, share: 33.3 }],
      chattering: [
        {
          ...swinging,
          annunciations: 30,
          times: 6,
          proposal: { set: { deadband: 0.4 }, unit_of_measure: 'K', why: 'It came back by 0.36 K at most.' },
        },
      ],
      fleeting: [{ ...airIn, annunciations: 2, times: 1, medianSeconds: 12, proposal: null }],
      stale: [{ ...airIn, since: '2031-05-06T07:08:09.000Z', hours: 26.5 }],
      floods: [
        {
          from: '2031-05-06T07:08:09.000Z',
          to: null,
          annunciations: 12,
          mostInTenMinutes: 12,
          firstOuts: [airIn],
        },
      ],
      acknowledging: [spread],
      clearing: [{ ...spread, count: 0, medianSeconds: null, p90Seconds: null }],
      perHour: [{ from: '2031-05-06T07:00:00.000Z', annunciations: 12 }],
    },
  },
} as const satisfies Partial<Record<RouteKey, Example>>;
