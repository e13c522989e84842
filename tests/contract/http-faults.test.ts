import { readFile } from 'node:fs/promises';
import { request } from 'node:http';
import { routeTable } from '@ebbline/shared/contract/route-table';
import { problemSchema } from '@ebbline/shared/contract/problem';
import { describe, expect, it } from 'vitest';
import { problemTable, type ProblemCode } from '../../backend/src/connections/http-api/error-to-status';
import { openApiDocument } from '../../backend/src/connections/http-api/openapi-document';
import { stopAfterAll } from '../helpers/stop-after';
import { until } from '../helpers/until';
import { startApp } from '../integration/app/running-app';
import { connectSender } from '../integration/app/telemetry';

type Route = (typeof routeTable)[number];
interface Described {
  readonly description: string;
  readonly content: Readonly<Record<string, unknown>>;
}

const keep = stopAfterAll();
const app = keep(await startApp({ variables: { EBBLINE_CLOCK: 'source' } }));
const alarm = await raiseAlarm();

async function raiseAlarm(): Promise<string> {
  const sender = keep(await connectSender(app.mqttUrl));
  const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);
  for (let second = 0; second < 30; second++) await sender.m1(startMs + second * 1000, { leak: 'wet' });
  const list = () => app.get<{ alarms: { id: string; entry: string }[] }>('/api/alarms');
  return (await until(async () => (await list()).alarms.find(({ entry }) => entry === 'WATER-1'))).id;
}

interface Ask {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
}

/** With headers that `fetch` would not send. */
const ask = async (path: string, { method = 'GET', headers = {}, body }: Ask) => {
  const proof = await app.signIn.proofFor(body);
  return new Promise<{ status: number; problem: unknown }>((resolve, reject) => {
    const { port } = new URL(app.url);
    const asking = request({ host: '127.0.0.1', port, path, method, headers: { ...proof, ...headers } }, (reply) => {
      let text = '';
      reply.setEncoding('utf8').on('data', (chunk: string) => (text += chunk));
      reply.on('end', () => resolve({ status: reply.statusCode ?? 0, problem: JSON.parse(text) as unknown }));
    });
    asking.on('error', reject);
    asking.end(body);
  });
};

const json = { 'content-type': 'application/json' };
const acknowledge = (body: unknown): Ask => ({ method: 'POST', headers: json, body: JSON.stringify(body) });
const permit = (changed: object): Ask =>
  acknowledge({
    unit: 'm1',
    branch: 'r1',
    until: '2031-05-06T08:00:00Z',
    expectedInLeak: 0.0005,
    operator: 'Ines',
    ...changed,
  });
const tests = '/api/units/{unit}/tightness-tests';
const tightness = (changed: object): Ask => acknowledge({ acceptanceLimit: 0.00001, operator: 'Ines', ...changed });
const guided = '/api/units/{unit}/guided-tests';
const check = acknowledge({ kind: 'zeroCheck', operator: 'Ines' });
const handEntries = '/api/units/{unit}/hand-entries';
const typed = (changed: object): Ask =>
  acknowledge({
    parameter: 'copper',
    value: 0.05,
    unit: 'mg/L',
    takenAt: '2031-05-06T06:00:00Z',
    operator: 'Ines',
    ...changed,
  });
const shift = { from: '2031-05-06T05:00:00Z', to: '2031-05-06T07:08:00Z', takerNamed: 'Omar' };
const handOver = (changed: object): Ask => acknowledge({ ...shift, operator: 'Ines', ...changed });
const span = 'from=2031-05-06T07:00:00Z&to=2031-05-06T08:00:00Z';
const ofAlarm = (id: string): string => `/api/alarms/${encodeURIComponent(id)}/acknowledge`;

/** Whatever can be provoked from outside without breaking the program. */
const hallExplanation = '/api/halls/{hall}/points/{point}/explanation';
const provoked: readonly (readonly [Route['path'], string, Ask, ProblemCode])[] = [
  ['/api/units/{unit}/points', '/api/units/none/points', {}, 'UNIT_UNKNOWN'],
  ['/api/units/{unit}/limits', '/api/units/none/limits', {}, 'UNIT_UNKNOWN'],
  ['/api/units/{unit}/points/{point}/explanation', '/api/units/none/points/loop.flow/explanation', {}, 'UNIT_UNKNOWN'],
  ['/api/units/{unit}/points/{point}/explanation', '/api/units/m1/points/none/explanation', {}, 'POINT_UNKNOWN'],
  [hallExplanation, '/api/halls/none/points/dewPoint/explanation', {}, 'HALL_UNKNOWN'],
  [hallExplanation, '/api/halls/north/points/none/explanation', {}, 'POINT_UNKNOWN'],
  ['/api/halls/{hall}/trails', '/api/halls/none/trails', {}, 'HALL_UNKNOWN'],
  ['/api/units/{unit}/setup', '/api/units/none/setup', {}, 'UNIT_UNKNOWN'],
  [tests, '/api/units/none/tightness-tests', {}, 'UNIT_UNKNOWN'],
  [tests, '/api/units/none/tightness-tests', tightness({}), 'UNIT_UNKNOWN'],
  [tests, '/api/units/m1/tightness-tests', tightness({}), 'TIGHTNESS_NO_VOLUME'],
  [tests, '/api/units/m1/tightness-tests', tightness({ gasVolume: 1 }), 'TIGHTNESS_SOURCE_RUNS'],
  [tests, '/api/units/m1/tightness-tests', tightness({ gasVolume: 1, sourceIsolated: true }), 'TIGHTNESS_FLOW'],
  [`${tests}/{id}`, '/api/units/m1/tightness-tests/none', {}, 'TIGHTNESS_UNKNOWN'],
  [
    `${tests}/{id}/end`,
    '/api/units/m1/tightness-tests/none/end',
    acknowledge({ operator: 'Ines' }),
    'TIGHTNESS_UNKNOWN',
  ],
  [guided, '/api/units/none/guided-tests', {}, 'UNIT_UNKNOWN'],
  [guided, '/api/units/none/guided-tests', check, 'UNIT_UNKNOWN'],
  [guided, '/api/units/m1/guided-tests', check, 'GUIDED_ALARM'],
  [guided, '/api/units/m1/guided-tests', acknowledge({ kind: 'none', operator: 'Ines' }), 'BODY_MALFORMED'],
  [
    guided,
    '/api/units/m1/guided-tests',
    acknowledge({ kind: 'zeroCheck', settings: { depth: 1 }, operator: 'Ines' }),
    'GUIDED_SETTING',
  ],
  [`${guided}/{id}`, '/api/units/m1/guided-tests/none', {}, 'GUIDED_UNKNOWN'],
  [
    `${guided}/{id}/confirm`,
    '/api/units/m1/guided-tests/none/confirm',
    acknowledge({ step: 'cautions', operator: 'Ines' }),
    'GUIDED_UNKNOWN',
  ],
  [
    `${guided}/{id}/cancel`,
    '/api/units/m1/guided-tests/none/cancel',
    acknowledge({ operator: 'Ines' }),
    'GUIDED_UNKNOWN',
  ],
  ['/api/units/{unit}/water', '/api/units/none/water', {}, 'UNIT_UNKNOWN'],
  [handEntries, '/api/units/none/hand-entries', {}, 'UNIT_UNKNOWN'],
  [handEntries, '/api/units/none/hand-entries', typed({}), 'UNIT_UNKNOWN'],
  [handEntries, '/api/units/m1/hand-entries', typed({ parameter: 'gold' }), 'HAND_ENTRY_PARAMETER'],
  [handEntries, '/api/units/m1/hand-entries', typed({ unit: 'kPa' }), 'HAND_ENTRY_UNIT_OF_MEASURE'],
  [handEntries, '/api/units/m1/hand-entries', typed({ as: 'Mo' }), 'HAND_ENTRY_FORM'],
  [handEntries, '/api/units/m1/hand-entries', typed({ takenAt: '2031-05-07T06:00:00Z' }), 'HAND_ENTRY_TIME'],
  [handEntries, '/api/units/m1/hand-entries', typed({ value: -1 }), 'HAND_ENTRY_RANGE'],
  [handEntries, '/api/units/m1/hand-entries', typed({ value: 'much' }), 'BODY_MALFORMED'],
  [
    `${handEntries}/{id}/correct`,
    '/api/units/m1/hand-entries/none/correct',
    acknowledge({ value: 7, unit: '1', takenAt: '2031-05-06T06:00:00Z', operator: 'Ines', note: 'wrong unit' }),
    'HAND_ENTRY_UNKNOWN',
  ],
  [
    `${handEntries}/{id}/withdraw`,
    '/api/units/m1/hand-entries/none/withdraw',
    acknowledge({ operator: 'Ines', note: 'of another unit' }),
    'HAND_ENTRY_UNKNOWN',
  ],
  [
    `${handEntries}/{id}/withdraw`,
    '/api/units/m1/hand-entries/none/withdraw',
    acknowledge({ operator: 'Ines', note: ' ' }),
    'BODY_MALFORMED',
  ],
  ['/api/report', `/api/report?hall=none&${span}`, {}, 'HALL_UNKNOWN'],
  ['/api/report', '/api/report?from=2031-05-06T08:00:00Z&to=2031-05-06T09:00:00Z', {}, 'REPORT_PERIOD'],
  ['/api/report', '/api/report?from=2031-04-06T08:00:00Z&to=2031-05-06T09:00:00Z', {}, 'REPORT_PERIOD'],
  ['/api/notes', `/api/notes?unit=none&${span}`, {}, 'UNIT_UNKNOWN'],
  ['/api/notes', `/api/notes?hall=none&${span}`, {}, 'HALL_UNKNOWN'],
  ['/api/notes', '/api/notes?from=2031-05-06T07:00:00Z&to=2031-05-06T07:00:00Z', {}, 'QUERY_MALFORMED'],
  ['/api/notes', '/api/notes', acknowledge({ text: ' ', operator: 'Ines' }), 'BODY_MALFORMED'],
  [
    '/api/notes',
    '/api/notes',
    acknowledge({ text: 'x', about: '2032-01-01T00:00:00Z', operator: 'Ines' }),
    'NOTE_TIME',
  ],
  ['/api/notes/{id}/correct', '/api/notes/n9/correct', acknowledge({ text: 'x', reason: 'x' }), 'NOTE_UNKNOWN'],
  ['/api/notes/{id}/withdraw', '/api/notes/n9/withdraw', acknowledge({ reason: 'x' }), 'NOTE_UNKNOWN'],
  ['/api/handovers', '/api/handovers', handOver({ to: '2031-05-06T04:00:00Z' }), 'HANDOVER_TIME'],
  ['/api/handovers', '/api/handovers', handOver({ takerNamed: 'Ines' }), 'HANDOVER_SAME_PERSON'],
  ['/api/handovers/{id}/take', '/api/handovers/h9/take', acknowledge({ operator: 'Ines' }), 'HANDOVER_UNKNOWN'],
  ['/api/energy', `/api/energy?unit=none&by=hour&${span}`, {}, 'UNIT_UNKNOWN'],
  ['/api/energy', `/api/energy?hall=none&by=hour&${span}`, {}, 'HALL_UNKNOWN'],
  ['/api/energy', '/api/energy?by=hour&from=2020-01-01T00:00:00Z&to=2031-01-01T00:00:00Z', {}, 'ENERGY_RANGE'],
  ['/api/energy', `/api/energy?unit=m1&hall=h&by=hour&${span}`, {}, 'QUERY_MALFORMED'],
  ['/api/permits', '/api/permits', permit({ unit: 'none' }), 'PERMIT_UNIT_UNKNOWN'],
  ['/api/permits', '/api/permits', permit({ branch: 'none' }), 'PERMIT_BRANCH_UNKNOWN'],
  ['/api/permits', '/api/permits', permit({ until: '2031-05-06T07:00:00Z' }), 'PERMIT_TIME'],
  ['/api/permits/{id}/close', '/api/permits/none/close', acknowledge({ operator: 'Ines' }), 'PERMIT_UNKNOWN'],
  ['/api/intake/last', '/api/intake/last?topic=none', {}, 'TOPIC_UNKNOWN'],
  ['/api/intake/last', '/api/intake/last', {}, 'QUERY_MALFORMED'],
  ['/api/demo/faults', '/api/demo/faults', {}, 'DEMO_ABSENT'],
  ['/api/history', '/api/history?unit=m1', {}, 'QUERY_MALFORMED'],
  ['/api/history', `/api/history?unit=none&point=loop.flow&${span}`, {}, 'UNIT_UNKNOWN'],
  ['/api/history', `/api/history?unit=m1&point=none&${span}`, {}, 'POINT_UNKNOWN'],
  ['/api/alarms/journal', '/api/alarms/journal?after=x', {}, 'QUERY_MALFORMED'],
  ['/api/alarms/spans', `/api/alarms/spans?units=m1,none&${span}`, {}, 'UNIT_UNKNOWN'],
  ['/api/alarms/spans', `/api/alarms/spans?units=m1,&${span}`, {}, 'QUERY_MALFORMED'],
  ['/api/history/uncertainty', `/api/history/uncertainty?unit=none&points=massFlow&${span}`, {}, 'UNIT_UNKNOWN'],
  ['/api/history/uncertainty', `/api/history/uncertainty?unit=m1&points=none&${span}`, {}, 'POINT_UNKNOWN'],
  [
    '/api/history/uncertainty',
    `/api/history/uncertainty?unit=m1&points=massFlow&moments=61&${span}`,
    {},
    'QUERY_MALFORMED',
  ],
  ['/api/alarms/{id}/acknowledge', ofAlarm(alarm), acknowledge({ operator: '' }), 'BODY_MALFORMED'],
  ['/api/alarms/{id}/acknowledge', ofAlarm('none'), acknowledge({ operator: 'Ines' }), 'ALARM_UNKNOWN'],
  [
    '/api/alarms/{id}/acknowledge',
    ofAlarm(alarm),
    acknowledge({ operator: 'Ines', comment: 'x'.repeat(20_000) }),
    'BODY_TOO_LARGE',
  ],
  ['/api/alarms/{id}/acknowledge', ofAlarm(alarm), { method: 'POST', body: 'operator=Ines' }, 'BODY_NOT_JSON'],
  ['/api/alarms/{id}/acknowledge', ofAlarm(alarm), { method: 'POST', headers: json, body: '{' }, 'REQUEST_MALFORMED'],
  ['/api/alarms/{id}/acknowledge', ofAlarm(alarm), acknowledge({ operator: 7 }), 'BODY_MALFORMED'],
  ['/api/people', '/api/people', {}, 'RIGHT_MISSING'],
  ['/api/alarms', '/api/alarms', { headers: { authorization: 'Bearer none' } }, 'TOKEN_REFUSED'],
  ['/api/session/sign-in', '/api/session/sign-in', acknowledge({ name: 'Ines', password: 'x' }), 'SIGN_IN_REFUSED'],
  ['/api/session/demo', '/api/session/demo', acknowledge({ name: 'Ines' }), 'DEMO_SIGN_IN_ABSENT'],
  [
    '/api/session/set-up',
    '/api/session/set-up',
    acknowledge({ link: 'none', password: 'kettle under nine willows' }),
    'SET_UP_LINK_UNKNOWN',
  ],
  ...routeTable.flatMap(({ path, method }) => {
    const asked = path.replace('{unit}', 'm1').replace('{id}', 'x').replace('{point}', 'loop.flow');
    const own = { method: method.toUpperCase() };
    return [
      [path, asked, { ...own, headers: { host: 'elsewhere.example' } }, 'HOST_FOREIGN'],
      [path, asked, { ...own, headers: { origin: 'http://elsewhere.example' } }, 'ORIGIN_FOREIGN'],
      [path, asked, { method: 'DELETE' }, 'METHOD_NOT_ALLOWED'],
      [path, asked, { ...own, headers: { 'x-long': 'x'.repeat(20_000) } }, 'HEADERS_TOO_LARGE'],
    ] as const;
  }),
];

const document = openApiDocument('0.1.0') as {
  readonly paths: Readonly<
    Record<string, Readonly<Record<string, { readonly responses: Readonly<Record<string, Described>> }>>>
  >;
};

function describedCodes({ path, method }: Route): readonly (readonly [number, string])[] {
  const responses = Object.entries(document.paths[path]?.[method]?.responses ?? {});
  return responses.flatMap(([status, { description }]) =>
    (description.match(/\b[A-Z]+(_[A-Z]+)+\b|\bINTERNAL\b/g) ?? []).map((code) => [Number(status), code] as const),
  );
}

/** Which source answers which routes. */
const controllers: readonly (readonly [file: string, paths: RegExp])[] = [
  ['alarms.controller.ts', /^\/api\/alarms/],
  ['history.controller.ts', /^\/api\/history/],
  ['site.controller.ts', /^\/api\/(site|(?:units|halls))/],
];

describe('the API document names', () => {
  it.for(provoked)('what %s answers to %s (%j): %s', async ([path, asked, how, code]) => {
    const { status, problem } = await ask(asked, how);
    expect(problemSchema.parse(problem).code).toBe(code);
    const method = (how.method ?? 'GET').toLowerCase();
    const same = routeTable.filter((one) => one.path === path);
    const route = same.find((one) => one.method === method) ?? same[0];
    if (route === undefined) throw new Error(`no route ${path}`);
    expect(describedCodes(route)).toContainEqual([status, code]);
  });

  it('an alarm that someone acknowledged already', async () => {
    const path = '/api/alarms/{id}/acknowledge';
    await app.send(ofAlarm(alarm), acknowledge({ operator: 'Ines' }));
    const { status, problem } = await ask(ofAlarm(alarm), acknowledge({ operator: 'Otto' }));
    const route = routeTable.find((one) => one.path === path);
    expect(route === undefined ? [] : describedCodes(route)).toContainEqual([
      status,
      problemSchema.parse(problem).code,
    ]);
    expect(status).toBe(409);
  });

  it('each code of the table with its status at some route, but for an address that there is not', () => {
    const described = new Map(routeTable.flatMap(describedCodes).map(([status, code]) => [code, status]));
    const table = Object.entries(problemTable).filter(([code]) => code !== 'ROUTE_UNKNOWN');
    expect([...described].sort()).toEqual(table.map(([code, { status }]) => [code, status]).sort());
  });

  it('every code that the source of a controller throws, at one of its routes', async () => {
    for (const [file, prefix] of controllers) {
      const source = await readFile(new URL(`../../backend/src/connections/http-api/${file}`, import.meta.url), 'utf8');
      const thrown = [...source.matchAll(/'([A-Z]+(?:_[A-Z]+)+)'/g)].map(([, code]) => code ?? '');
      const codes = thrown.filter((code) => code in problemTable);
      const routes = routeTable.filter(({ path }) => prefix.test(path));
      const described = new Set(routes.flatMap(describedCodes).map(([, code]) => code));
      expect(
        codes.filter((code) => !described.has(code)),
        file,
      ).toEqual([]);
    }
  });
});
