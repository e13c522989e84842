import type { Example } from './http-example';

const asked = {
  key: 'limit',
  title: 'May differ by',
  kind: 'number',
  unit: '%',
  least: 1,
  most: 30,
  usual: 5,
} as const;

const step = {
  id: 'zero',
  kind: 'measure',
  title: 'Every pressure beside barometer and head of water',
  text: 'Leave everything as it is.',
  cautions: [],
  asks: [],
  doneAt: null,
  by: null,
  given: {},
  comment: '',
  seconds: null,
  samples: null,
  readings: [],
} as const;

const cautions = {
  ...step,
  id: 'cautions',
  kind: 'confirm',
  title: 'What may hurt someone',
  text: 'Read all of it.',
  cautions: ['Eye protection on.'],
  asks: [asked],
  doneAt: '2031-05-06T07:09:09.250Z',
  by: 'Ines',
  given: { limit: 5 },
} as const;

const measures = {
  id: 'N1:zeroCheck:1935817689250',
  unit: 'N1',
  kind: 'zeroCheck',
  title: 'Zero check of pressures',
  state: 'measure',
  startedBy: 'Ines',
  station: '127.0.0.1',
  startedAt: '2031-05-06T07:08:09.250Z',
  comment: 'quarterly',
  settings: [{ title: 'May differ by', value: 5, unit: '%' }],
  steps: [cautions, step],
  step: 'zero',
  refusals: [],
  criterion: 'Drift over one minute within a quarter of the accuracy. Own rule.',
  instruments: [{ point: 'separator.pressure', expandedUncertainty: 462, quantity: 'absolutePressure' }],
  live: {
    seconds: 41,
    samples: 40,
    window: 60,
    least: 60,
    most: 900,
    watched: [
      {
        reading: 'separator.pressure',
        title: 'Separator',
        quantity: 'pressureDifference',
        drift: null,
        driftUncertainty: null,
        allowed: 100,
        steady: false,
        seconds: [5, 15, 25],
        means: [21, 19, 20],
      },
    ],
  },
  result: null,
  verdict: null,
  endedFor: null,
  endedBy: null,
  endedAt: null,
  summary: 'It measures.',
} as const;

const reading = {
  reading: 'separator.pressure',
  title: 'Separator',
  quantity: 'pressureDifference',
  mean: 20,
  scatter: 4,
  degreesOfFreedom: 5,
  least: -80,
  most: 120,
} as const;

const ended = {
  ...measures,
  state: 'ended',
  steps: [cautions, { ...step, doneAt: '2031-05-06T07:11:09.250Z', seconds: 60, samples: 60, readings: [reading] }],
  step: null,
  live: null,
  result: {
    figures: [
      {
        title: 'Separator',
        quantity: 'pressureDifference',
        value: 20,
        expandedUncertainty: 116,
        coverageFactor: 2,
        low: -400,
        high: 400,
        verdict: 'passes',
        budget: [{ from: 'ambient.pressure', contribution: 58 }],
      },
    ],
    notes: ['Supply main: not judged, as the site file states no elevation or no accuracy.'],
  },
  verdict: 'passes',
  endedFor: 'completed',
  endedAt: '2031-05-06T07:11:09.250Z',
  summary: 'Passes: each of 1 within its limits, its whole interval with it.',
} as const;

const refusals = [{ code: 'GUIDED_NOT_VENTED', message: 'the unit’s mode is not “vented”' }] as const;

/** Examples of guided tests. */
export const guidedExamples = {
  'get /api/guided-tests': {
    reply: {
      time: '2031-05-06T07:38:10.250Z',
      units: [
        {
          unit: 'N1',
          open: { id: measures.id, title: measures.title },
          offers: [{ kind: 'zeroCheck', title: measures.title, refusals }],
          rise: {
            running: null,
            refusals: [{ code: 'TIGHTNESS_FLOW', message: 'water flows' }],
            last: { id: 'N1:1935817689250', endedAt: '2031-05-06T07:11:09.250Z', verdict: 'notDecided' },
          },
          last: { id: ended.id, title: ended.title, endedAt: ended.endedAt, verdict: 'passes' },
        },
      ],
    },
  },
  'get /api/units/{unit}/guided-tests': {
    reply: {
      unit: 'N1',
      time: '2031-05-06T07:38:10.250Z',
      offers: [
        {
          kind: 'zeroCheck',
          title: measures.title,
          about: 'Each pressure has to read the barometer and the water above it.',
          criterion: measures.criterion,
          cautions: ['Eye protection on.'],
          asks: [asked],
          steps: [{ id: step.id, title: step.title, text: step.text }],
          refusals,
        },
      ],
      tests: [ended],
    },
  },
  'get /api/units/{unit}/guided-tests/{id}': { reply: ended },
  'post /api/units/{unit}/guided-tests': {
    body: { kind: 'zeroCheck', settings: {}, operator: 'Ines', comment: 'quarterly' },
    reply: measures,
  },
  'post /api/units/{unit}/guided-tests/{id}/confirm': {
    body: { step: 'cautions', given: { limit: 5 }, operator: 'Ines', comment: '' },
    reply: measures,
  },
  'post /api/units/{unit}/guided-tests/{id}/cancel': { body: { operator: 'Ines', comment: '' }, reply: ended },
} as const satisfies Readonly<Record<string, Example>>;
