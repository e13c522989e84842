import type { Example } from './http-example';

const live = {
  limit: 5000,
  low: null,
  deadband: 1000,
  onDelaySeconds: 10,
  offDelaySeconds: 15,
  reAlarmAfterSeconds: 3600,
  enabled: true,
  action: null,
};

const outcome = {
  settings: live,
  raised: 2,
  perDay: 2,
  secondsInAlarm: 90,
  longestSeconds: 60,
  shortestSeconds: 30,
  toldAgain: 1,
  chatteringTimes: 0,
  episodes: [
    {
      unit: 'N1',
      part: null,
      from: '2031-05-06T07:08:09.000Z',
      to: '2031-05-06T07:09:09.000Z',
      priority: 2,
      worst: 4180,
      limit: 5000,
    },
    {
      unit: 'N1',
      part: null,
      from: '2031-05-06T08:08:09.000Z',
      to: null,
      priority: null,
      worst: null,
      limit: null,
    },
  ],
  more: 0,
};

const running = {
  id: '9b2f5e1c-8b0c-4f6e-9b1e-4a1c6f6f0c11',
  entry: 'MARGIN-1',
  title: 'Vacuum margin small',
  units: ['N1'],
  from: '2031-05-06T00:00:00.000Z',
  to: '2031-05-07T00:00:00.000Z',
  state: 'running',
  method: 'stored',
  progress: 0,
  secondsLeft: 0.8,
  unit_of_measure: 'Pa',
  point: 'vacuumMarginWorst',
  live: null,
  proposed: null,
  secondsJudged: 0,
  secondsMissing: 0,
  notes: ['Data that is missing ends no alarm.'],
};

const done = {
  ...running,
  state: 'done',
  progress: 1,
  secondsLeft: 0,
  live: outcome,
  proposed: { ...outcome, settings: { ...live, limit: 4000 } },
  secondsJudged: 86_000,
  secondsMissing: 400,
};

/** Examples of a limit tried over what was recorded. */
export const limitTrialExamples = {
  'post /api/limit-trials': {
    body: {
      entry: 'MARGIN-1',
      units: ['N1'],
      from: '2031-05-06T00:00:00.000Z',
      to: '2031-05-07T00:00:00.000Z',
      proposed: { limit: 4000, reAlarmAfterSeconds: null },
    },
    reply: running,
  },
  'get /api/limit-trials/{id}': { reply: done },
  'post /api/limit-trials/{id}/cancel': { reply: { ...done, state: 'cancelled', progress: 0.5, secondsLeft: null } },
} as const satisfies Readonly<Record<string, Example>>;
