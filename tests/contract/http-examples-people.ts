import type { RouteKey } from '@ebbline/shared/contract/route-table';
import type { Example } from './http-example';

const session = {
  person: { name: 'Ines', role: 'operator', rights: ['look', 'acknowledge', 'permit', 'measure'], by: 'password' },
  csrf: 'Yk0vZ0p3aVhqcw',
  endsAt: '2031-05-06T19:08:09.000Z',
  idleEndsAt: '2031-05-06T08:08:09.000Z',
  ways: { password: true, demo: false, openId: { label: 'Sign in with the house directory' } },
  setUpNeeded: false,
};
const nobody = { ...session, person: null, csrf: null, endsAt: null, idleEndsAt: null };
const person = {
  id: 'p7',
  name: 'Ines',
  role: 'operator',
  enabled: true,
  by: 'password',
  waiting: true,
  addedAt: '2031-05-06T07:08:09.000Z',
  lastSignInAt: null,
};
const link = { person, link: '/set-up#q1w2', endsAt: '2031-05-07T07:08:09.000Z' };
const token = {
  id: 't3',
  name: 'shift report',
  rights: ['look'],
  addedBy: 'Ada',
  addedAt: '2031-05-06T07:08:09.000Z',
  endsAt: '2031-08-06T07:08:09.000Z',
  lastUsedAt: null,
  withdrawnAt: null,
};

/** Who may come in: examples by hand. */
export const peopleExamples = {
  'get /api/session': { reply: session },
  'post /api/session/sign-in': { reply: session, body: { name: 'Ines', password: 'kettle under nine willows' } },
  'post /api/session/demo': {
    reply: { ...session, ways: { ...session.ways, demo: true, openId: null }, setUpNeeded: true },
    body: { name: 'Ines' },
  },
  'post /api/session/set-up': { reply: session, body: { link: 'q1w2', password: 'kettle under nine willows' } },
  'post /api/session/password': {
    reply: session,
    body: { old: 'kettle under nine willows', password: 'nine willows over a kettle' },
  },
  'post /api/session/end': { reply: nobody, body: { everywhere: true } },
  'get /api/people': { reply: { people: [person] } },
  'post /api/people': { reply: link, body: { name: 'Ines', role: 'operator' } },
  'post /api/people/{id}/change': { reply: person, body: { role: 'operator', reason: 'new on this shift' } },
  'post /api/people/{id}/link': { reply: link, body: { reason: 'password lost' } },
  'get /api/tokens': { reply: { tokens: [token] } },
  'post /api/tokens': {
    reply: { token, secret: 'c2VjcmV0' },
    body: { name: 'shift report', rights: ['look'], days: 92 },
  },
  'post /api/tokens/{id}/withdraw': {
    reply: { ...token, withdrawnAt: '2031-05-07T07:08:09.000Z' },
    body: { reason: 'the report is made elsewhere' },
  },
} as const satisfies Partial<Readonly<Record<RouteKey, Example>>>;
