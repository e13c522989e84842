import type { RouteKey } from '@ebbline/shared/contract/route-table';
import type { Example } from './http-example';

const heat = { energy: 7.2e8, expandedUncertainty: 1.4e7, measuredSeconds: 3600, wantedSeconds: 3600, share: 1 };
const half = { energy: 3.1e8, expandedUncertainty: null, measuredSeconds: 1800, wantedSeconds: 3600, share: 0.5 };
const none = { energy: null, expandedUncertainty: null, measuredSeconds: 0, wantedSeconds: 0, share: null };
const hour = {
  start: '2031-05-06T07:00:00.000Z',
  end: '2031-05-06T08:00:00.000Z',
  heatRemoved: heat,
  facilityHeat: none,
  chipEnergy: half,
  unitEnergy: { ...heat, energy: 1.1e7 },
  heatPerUnitEnergy: 65.5,
};

/** Bodies of energy totals, hand entries and water quality. */
export const waterExamples = {
  'get /api/energy': {
    query: { unit: 'N1', from: '2031-05-06T07:00:00Z', to: '2031-05-06T08:00:00Z', by: 'hour' },
    reply: {
      hall: null,
      unit: 'N1',
      units: ['N1'],
      timeZone: 'Europe/Oslo',
      by: 'hour',
      from: hour.start,
      to: hour.end,
      periods: [hour],
      total: { ...hour, heatPerUnitEnergy: null },
    },
  },
} as const satisfies Partial<Record<RouteKey, Example>>;
