import type { RouteKey } from '@ebbline/shared/contract/route-table';
import type { Example } from './http-example';

const proposal = {
  kind: 'unit',
  holder: 'N1',
  point: 'supply.temperature',
  title: 'Supply temperature',
  grade: 'likely',
  reasons: [
    { speaks: 'for', text: 'its name speaks of supply and temperature' },
    { speaks: 'against', text: 'N1 has it already, from demo/north/N1/telemetry' },
  ],
  line: "supply.temperature: { topic: 'works/cdu-n1', path: ['SupTemp_degC'], unit: '°C' }",
  needs: [],
};

const heard = {
  time: '2031-05-06T07:10:00.000Z',
  listening: {
    filter: 'works/#',
    by: 'Ines',
    since: '2031-05-06T07:08:00.000Z',
    until: '2031-05-06T07:23:00.000Z',
    over: false,
    trouble: null,
  },
  messages: 120,
  notLookedAt: 0,
  leftOut: 0,
  mapped: 40,
  places: [
    {
      topic: 'works/cdu-n1',
      path: ['SupTemp_degC'],
      count: 120,
      latest: '31.5',
      seen: '31 to 32',
      proposals: [proposal],
    },
    { topic: 'works/cdu-n1', path: ['serial'], count: 120, latest: '88213', seen: '88213', proposals: [] },
  ],
};

/** Bodies of the mapping help. */
export const mappingExamples = {
  'get /api/mapping': { query: { unit: 'N1' }, reply: heard },
  'post /api/mapping/listen': {
    body: { filter: 'works/#' },
    reply: { ...heard, messages: 0, places: [] },
  },
  'post /api/mapping/stop': { body: {}, reply: { ...heard, listening: { ...heard.listening, over: true } } },
  'post /api/mapping/try': {
    body: { lines: `units:\n  N1:\n    points:\n      ${proposal.line}\n` },
    reply: {
      text: null,
      check: {
        accepted: false,
        summary: null,
        faults: [{ line: 4, key: 'units.N1.points.supply.temperature', message: 'stands in the site file already' }],
        warnings: [],
      },
    },
  },
} as const satisfies Partial<Record<RouteKey, Example>>;
