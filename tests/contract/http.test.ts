import { peopleRoutes } from '@ebbline/shared/contract/people-routes';
import { routeKey, routeTable } from '@ebbline/shared/contract/route-table';
import { problemSchema } from '@ebbline/shared/contract/problem';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { problemTable } from '../../backend/src/connections/http-api/error-to-status';
import { openApiDocument } from '../../backend/src/connections/http-api/openapi-document';
import { postJson, startApp } from '../integration/app/running-app';
import { demoSiteFile, startDemoSimulator } from '../integration/app/demo-simulator';
import { connectSender, topicOfM1 } from '../integration/app/telemetry';
import { temporaryFolder } from '../helpers/temporary-folder';
import { stopAfterAll } from '../helpers/stop-after';
import { until } from '../helpers/until';
import { httpExamples, problemExample } from './http-examples';

interface Operation {
  readonly parameters: readonly { readonly name: string; readonly in: string; readonly required: boolean }[];
  readonly requestBody?: { readonly content: Content };
  readonly responses: Readonly<Record<string, { readonly content: Content }>>;
}
type Content = Readonly<Record<string, { readonly schema: Parameters<typeof z.fromJSONSchema>[0] }>>;
interface OpenApi {
  readonly openapi: string;
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, Parameters<typeof z.fromJSONSchema>[0]>> };
}

interface Entries {
  readonly entries: readonly { readonly id: string; readonly correctedBy: string | null }[];
}

interface Named {
  readonly tests: readonly { readonly id: string }[];
}

const keep = stopAfterAll();
const document = openApiDocument('0.1.0') as unknown as OpenApi;
const routes = routeTable.map((route) => [`${route.method} ${route.path}`, route] as const);

const operationOf = ({ path, method }: (typeof routeTable)[number]): Operation => {
  const operation = document.paths[path]?.[method];
  if (operation === undefined) throw new Error(`the document lacks ${method} ${path}`);
  return operation;
};

/** The document's own schema, which also refuses members that it does not name. */
const fromDocument = (content: Content | undefined, type = 'application/json'): z.ZodType => {
  const schema = content?.[type]?.schema;
  if (schema === undefined) throw new Error(`the document has no schema of ${type}`);
  return z.fromJSONSchema(schema, { defaultTarget: 'openapi-3.0' });
};

const replySchema = (route: (typeof routeTable)[number]) => fromDocument(operationOf(route).responses['200']?.content);

describe('the example of', () => {
  it.for(routes)('%s fits the contract and the API document', ([, route]) => {
    const { query, body, reply } = httpExamples[routeKey(route)];
    expect(route.reply.parse(reply)).toEqual(reply);
    expect(replySchema(route).parse(reply)).toEqual(reply);
    expect(query === undefined).toBe(route.query === null);
    if (route.query !== null) route.query.parse(query);
    expect(body === undefined).toBe(route.body === null);
    if (route.body !== null) {
      expect(route.body.parse(body)).toEqual(body);
      expect(fromDocument(operationOf(route).requestBody?.content).parse(body)).toEqual(body);
    }
  });

  it.for(routes)('%s is refused by both when a member is missing or of another type', ([, route]) => {
    const reply = httpExamples[routeKey(route)].reply as Record<string, unknown>;
    for (const member of Object.keys(reply)) {
      for (const broken of [
        { ...reply, [member]: undefined },
        { ...reply, [member]: { unexpected: true } },
      ]) {
        if (route.path === '/api/alarms/{id}/acknowledge' && member === 'recorded') continue;
        expect(route.reply.safeParse(broken).success, member).toBe(false);
        expect(replySchema(route).safeParse(JSON.parse(JSON.stringify(broken))).success, member).toBe(false);
      }
    }
  });

  it('a problem fits RFC 9457 as the contract has it', () => {
    expect(problemSchema.parse(problemExample)).toEqual(problemExample);
    const described = z.fromJSONSchema(document.components.schemas['Problem'] ?? false, {
      defaultTarget: 'openapi-3.0',
    });
    expect(described.parse(problemExample)).toEqual(problemExample);
    expect(described.safeParse({ ...problemExample, code: undefined }).success).toBe(false);
  });
});

describe('the API document', () => {
  it('has every route with its parameters', () => {
    expect(document.openapi).toMatch(/^3\.0\./);
    for (const route of routeTable) {
      const { parameters } = operationOf(route);
      const inPath = [...route.path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name);
      expect(parameters.filter((one) => one.in === 'path').map(({ name }) => name)).toEqual(inPath);
    }
    const history = routeTable.find(({ path }) => path === '/api/history') ?? routeTable[0];
    const parameters = operationOf(history).parameters.map(({ name, required }) => [name, required]);
    expect(parameters).toEqual([
      ['unit', true],
      ['point', true],
      ['from', true],
      ['to', true],
      ['buckets', false],
    ]);
  });

  it('is served as it is', async () => {
    const app = keep(await startApp());
    expect(await app.get('/api/openapi.json')).toEqual(JSON.parse(JSON.stringify(document)));
  });
});

describe('the running program', () => {
  it('answers every route as the contract and the document say', async () => {
    const folder = keep(await temporaryFolder());
    const site = await demoSiteFile(folder.path);
    const app = keep(await startApp({ variables: { EBBLINE_CLOCK: 'source', EBBLINE_SITE: site } }));
    keep(await startDemoSimulator(app.mqttUrl, () => ({ accepted: true })));
    const sender = keep(await connectSender(app.mqttUrl));
    const startMs = Date.UTC(2031, 4, 6, 7, 8, 9);
    for (let second = 0; second < 30; second++) await sender.m1(startMs + second * 1000, { leak: 'wet' });
    await sender.raw('small/m2/supply/t', 'warm');
    const alarms = () => app.get<{ alarms: { id: string; entry: string }[] }>('/api/alarms');
    const alarm = await until(async () => (await alarms()).alarms.find(({ entry }) => entry === 'WATER-1'));
    await until(async () => (await app.get<{ refusals: unknown[] }>('/api/intake')).refusals.length === 1);
    const from = new Date(startMs).toISOString();
    const to = new Date(startMs + 60_000).toISOString();
    const queries: Readonly<Record<string, string>> = {
      '/api/history': `?unit=m1&point=loop.flow&from=${from}&to=${to}&buckets=7`,
      '/api/energy': `?unit=m1&from=${from}&to=${to}&by=hour`,
      '/api/alarms/journal': `?from=${from}&after=0`,
      '/api/alarms/findable': '?search=water',
      '/api/alarms/spans': `?units=m1&from=${from}&to=${to}`,
      '/api/history/uncertainty': `?unit=m1&points=massFlow,loop.flow&from=${from}&to=${to}&moments=3`,
      '/api/past/halls/{hall}': `?at=${new Date(startMs + 20_000).toISOString()}`,
      '/api/past/halls/{hall}/trails': `?at=${new Date(startMs + 20_000).toISOString()}`,
      '/api/past/units/{unit}': `?at=${new Date(startMs + 20_000).toISOString()}`,
      '/api/past/marks': `?from=${from}&to=${to}`,
      '/api/notes': `?from=${from}&to=${to}`,
      '/api/report': `?from=${from}&to=${to}`,
      '/api/intake/last': `?topic=${encodeURIComponent(topicOfM1)}`,
    };
    await until(async () => (await app.get<{ running: boolean }>('/api/demo/faults')).running);
    const typed = { unit: 'mg/L', takenAt: from, operator: 'Ines' };
    const bodies: Readonly<Record<string, unknown>> = {
      'post /api/permits': { unit: 'm1', branch: 'r1', until: to, expectedInLeak: 0, operator: 'Ines' },
      'post /api/units/{unit}/tightness-tests': {
        acceptanceLimit: 0.00001,
        dry: true,
        sourceIsolated: true,
        gasVolume: 1,
        operator: 'Ines',
      },
      'post /api/units/{unit}/hand-entries': { ...typed, parameter: 'copper', value: 0.05 },
      'post /api/units/{unit}/hand-entries/{id}/correct': { ...typed, value: 0.06, note: 'a slip of the pen' },
      'post /api/units/{unit}/hand-entries/{id}/withdraw': { operator: 'Ines', note: 'of another unit' },
      'post /api/limit-trials': { entry: 'WATER-1', units: ['m1'], from, to, proposed: { onDelaySeconds: 3 } },
      'post /api/alarms/acknowledge': { alarms: [alarm.id], operator: 'Ines' },
      'post /api/alarms/{id}/shelve': { operator: 'Ines', reason: 'sensor is being cleaned', minutes: 10 },
      'post /api/alarms/{id}/take-out-of-service': {
        operator: 'Ines',
        reason: 'tray is being changed',
        interimMeasures: 'a person watches',
        plannedEnd: null,
      },
      'post /api/alarm-list/changes': {
        operator: 'Ines',
        entry: 'DEW-1',
        scope: { kind: 'unit', id: 'm1' },
        set: { limit: 2.5 },
        unit_of_measure: 'K',
        reason: 'a humid week',
      },
      'post /api/notes': { text: 'The tray is wet.', unit: 'm1', operator: 'Ines' },
      'post /api/notes/{id}/correct': { text: 'The floor is wet.', reason: 'a slip of the pen', operator: 'Ines' },
      'post /api/notes/{id}/withdraw': { reason: 'of another unit', operator: 'Ines' },
      'post /api/handovers': { from, to, takerNamed: 'Omar', operator: 'Ines' },
      'post /api/handovers/{id}/take': { operator: 'Omar' },
      'post /api/site/reload': {},
      'post /api/site/check': { text: 'site: {}' },
      'post /api/mapping/listen': { filter: 'works/#' },
      'post /api/mapping/stop': {},
      'post /api/mapping/try': { lines: 'units: {}' },
      'post /api/demo/faults': { id: 'slowInLeak', kind: 'fault', unit: 'm1' },
    };
    // What is read stands after what is done: some of it is there only then.
    const ofPeople = new Set<string>(peopleRoutes.map(({ path }) => path));
    let trial = '';
    let said = '';
    // A guided test needs a plant in its state and no alarm, a held change two persons: gone through where there are such.
    const needsState = (path: string): boolean => /\/(guided-tests|proposals)\//.test(path);
    const plant = routeTable.filter(
      ({ path, method }) =>
        !ofPeople.has(path) && !needsState(path) && !(method === 'post' && path.endsWith('/guided-tests')),
    );
    for (const route of plant.sort((a, b) => b.method.localeCompare(a.method))) {
      const { permits } = await app.get<{ permits: { id: string }[] }>('/api/permits');
      const ofTest = route.path.includes('tightness');
      const [test] = ofTest ? (await app.get<Named>('/api/units/m1/tightness-tests')).tests : [];
      const ofEntry = route.path.includes('hand-entries/');
      const entries = ofEntry ? (await app.get<Entries>('/api/units/m1/hand-entries')).entries : [];
      const entry = entries.find(({ correctedBy }) => correctedBy === null);
      const id = ofEntry
        ? (entry?.id ?? '')
        : ofTest
          ? (test?.id ?? '')
          : route.path.startsWith('/api/permits')
            ? (permits[0]?.id ?? '')
            : route.path.startsWith('/api/limit-trials')
              ? trial
              : /notes|handovers/.test(route.path)
                ? said
                : alarm.id;
      const path = route.path
        .replace('{unit}', 'm1')
        .replace('{hall}', 'north')
        .replace('{point}', route.path.startsWith('/api/halls/') ? 'heatRemoved' : 'massFlow')
        .replace('{id}', encodeURIComponent(id));
      const act = route.method === 'post' ? postJson(bodies[routeKey(route)] ?? { operator: 'Ines' }) : undefined;
      // On the demo site anyone may look; what asks for more is asked by name.
      const named = route.right === 'changeSite' ? { headers: await app.signIn.proof('Ines') } : undefined;
      const reply = await app.send(`${path}${queries[route.path] ?? ''}`, act ?? named);
      expect(reply.status, path).toBe(200);
      const body: unknown = await reply.json();
      if (/notes|handovers/.test(route.path)) said = (body as { id?: string }).id ?? said;
      if (route.path === '/api/limit-trials') trial = (body as { id: string }).id;
      expect(route.reply.parse(body), path).toEqual(body);
      expect(replySchema(route).parse(body), path).toEqual(body);
    }
    expect(app.faults).toEqual([]);
  });

  it('has a title and a status of an error for every code of a problem', () => {
    for (const [code, { status, title }] of Object.entries(problemTable)) {
      expect(status, code).toBeGreaterThanOrEqual(400);
      expect(status, code).toBeLessThan(600);
      expect(title, code).not.toBe('');
    }
  });
});
