import type { RouteKey } from '@ebbline/shared/contract/route-table';
import type { Example } from './http-example';

const period = { from: '2031-05-06T07:00:00.000Z', to: '2031-05-06T08:00:00.000Z' };

export const trendExamples: Readonly<
  Record<Extract<RouteKey, 'get /api/alarms/spans' | 'get /api/history/uncertainty'>, Example>
> = {
  'get /api/alarms/spans': {
    query: { units: 'N1,N2', ...period },
    reply: {
      ...period,
      searchableFrom: '2030-04-01T00:00:00.000Z',
      readTo: '2031-05-06T07:59:00.000Z',
      spans: [
        {
          alarm: 'N1:AIR-1',
          unit: 'N1',
          hall: 'north',
          entry: 'AIR-1',
          title: 'Air is being drawn in',
          priority: 1,
          from: '2031-05-06T07:08:09.000Z',
          to: '2031-05-06T07:20:00.000Z',
          acknowledged: '2031-05-06T07:09:30.500Z',
          where: 'r5',
          foldedUnder: null,
        },
        {
          alarm: 'N2:MARGIN-2',
          unit: 'N2',
          hall: 'north',
          entry: 'MARGIN-2',
          title: 'Vacuum margin low',
          priority: 2,
          from: null,
          to: null,
          acknowledged: null,
          where: null,
          foldedUnder: 'N2:AIR-1',
        },
      ],
    },
  },
  'get /api/history/uncertainty': {
    query: { unit: 'N1', points: 'heatRemoved,capture', ...period, moments: '2' },
    reply: {
      unit: 'N1',
      pending: 1,
      moments: ['2031-05-06T07:00:00.000Z', '2031-05-06T07:30:00.000Z'],
      points: [
        { point: 'heatRemoved', unit_of_measure: 'W', expandedUncertainty: [4120.5, null] },
        { point: 'capture', unit_of_measure: '1', expandedUncertainty: [0.031, 0.032] },
      ],
      minutesBefore: '2031-04-22T00:00:00.000Z',
    },
  },
};
