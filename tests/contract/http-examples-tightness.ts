import type { Example } from './http-example';

const running = {
  id: 'N1:tightness:1935817689250',
  unit: 'N1',
  state: 'running',
  startedBy: 'Ines',
  station: '127.0.0.1',
  startedAt: '2031-05-06T07:08:09.250Z',
  plannedMinutes: 30,
  acceptanceLimit: 0.0000027,
  dry: false,
  sourceIsolated: false,
  gasVolumeStated: null,
  comment: 'after the new gasket',
  elapsed: 0,
  samples: 0,
  begin: { pressure: 20_000, temperature: 25, level: 0.6, gasVolume: 0.51 },
  result: null,
  steadiness: 'tooEarly',
  verdict: null,
  endedFor: null,
  endedBy: null,
  endedAt: null,
  summary: 'Too early for a result; limit 0.162 free L/min (20 °C, 101.3 kPa).',
  cautions: ['Keep the vacuum.'],
};

const ended = {
  ...running,
  state: 'ended',
  elapsed: 1800,
  samples: 1799,
  result: {
    throughput: 0.0859,
    freeAir: 8.34e-7,
    standardUncertainty: 2.24e-7,
    degreesOfFreedom: 57,
    coverageFactor: 2.04,
    expandedUncertainty: 4.57e-7,
    pressureRise: 293,
    gasVolume: 0.51,
    gasTemperature: 25,
    blocks: 59,
    budget: [{ from: 'scatter about the line', contribution: 2.24e-7 }],
  },
  steadiness: 'steady',
  verdict: 'passes',
  endedFor: 'endedByPerson',
  endedBy: 'Otto',
  endedAt: '2031-05-06T07:38:09.250Z',
};

/** Examples of the guided pressure-rise test. */
export const tightnessExamples = {
  'get /api/units/{unit}/tightness-tests': {
    reply: {
      unit: 'N1',
      time: '2031-05-06T07:38:10.250Z',
      refusals: [{ code: 'TIGHTNESS_SOURCE_RUNS', message: 'the vacuum source runs' }],
      cautions: ['Keep the vacuum.'],
      tests: [ended],
    },
  },
  'get /api/units/{unit}/tightness-tests/{id}': { reply: ended },
  'post /api/units/{unit}/tightness-tests': {
    body: {
      plannedMinutes: 30,
      acceptanceLimit: 0.0000027,
      dry: false,
      sourceIsolated: false,
      gasVolume: null,
      operator: 'Ines',
      comment: 'after the new gasket',
    },
    reply: running,
  },
  'post /api/units/{unit}/tightness-tests/{id}/end': { body: { operator: 'Otto', comment: '' }, reply: ended },
} as const satisfies Readonly<Record<string, Example>>;
