import { z } from 'zod';
import { acknowledgeRequestSchema, alarmListSchema, alarmSchema, journalPageSchema, prioritySchema } from './alarm';
import { alertListSchema } from './alert';
import { demoCommandSchema, demoStateSchema } from './demo-faults';
import { closePermitRequestSchema, openPermitRequestSchema, permitListSchema, permitSchema } from './permit';
import { checkSiteRequestSchema, reloadSiteRequestSchema, siteCheckSchema, siteStateSchema } from './site-state';
import { limitListSchema, lastPayloadQuerySchema, lastPayloadSchema, setupSchema } from './setup';
import { isoTimeSchema, readingSchema } from './reading';

export const modes = [
  'off',
  'vented',
  'tightnessTest',
  'filling',
  'purging',
  'starting',
  'running',
  'standby',
  'stopping',
  'draining',
  'service',
  'powerReturn',
] as const;
/** Modes of a loop, in the order in which it is filled, run, drained and served (common practice, no source). Not known counts as running. */
export const modeSchema = z.enum(modes);
export type Mode = z.infer<typeof modeSchema>;

export const brokerStateSchema = z.object({
  state: z.enum(['connected', 'connecting', 'lost']),
  address: z.string().describe('host and port, never a credential'),
  embedded: z.boolean(),
  note: z.string().nullable().describe('such as: port 1883 was taken, 1884 is used'),
});
export type BrokerState = z.infer<typeof brokerStateSchema>;

export const clockStateSchema = z.object({
  kind: z.enum(['wall', 'source']),
  now: isoTimeSchema.nullable().describe('the time in force; null on the source clock before the first sample'),
});
export type ClockState = z.infer<typeof clockStateSchema>;

export const healthSchema = z.object({
  status: z.enum(['ok', 'degraded', 'starting']),
  reasons: z.array(z.object({ code: z.string(), message: z.string() })),
  clock: clockStateSchema,
  broker: brokerStateSchema,
  lastSampleAge: z.number().nullable().describe('seconds since the newest accepted sample arrived'),
  version: z.string(),
});
export type Health = z.infer<typeof healthSchema>;

export const siteSchema = z.object({
  id: z.string(),
  name: z.string(),
  timeZone: z.string(),
  altitude: z.number().describe('m'),
  demo: z.boolean(),
  halls: z.array(z.object({ id: z.string(), name: z.string(), units: z.array(z.string()) })),
  loops: z.array(
    z.object({ id: z.string(), name: z.string(), units: z.array(z.string()), unitsNeeded: z.number().int() }),
  ),
  units: z.array(
    z.object({
      id: z.string(),
      hall: z.string(),
      name: z.string(),
      shape: z.enum(['a', 'b', 'c']),
      gateway: z.string(),
      branches: z.array(
        z.object({ id: z.string(), name: z.string(), ratedFlow: z.number().nullable().describe('m3/s') }),
      ),
      plates: z.array(z.object({ id: z.string(), name: z.string(), branch: z.string().nullable() })),
      servers: z.array(z.object({ id: z.string(), name: z.string(), branch: z.string().nullable() })),
      tanks: z.array(z.object({ id: z.string(), name: z.string() })),
      loop: z.string(),
      nodes: z.array(
        z.object({
          id: z.string(),
          name: z.string(),
          main: z.enum(['supply', 'return']),
          elevation: z.number().describe('m'),
        }),
      ),
    }),
  ),
});
export type Site = z.infer<typeof siteSchema>;

export const unitListSchema = z.object({
  units: z.array(
    z.object({
      id: z.string(),
      hall: z.string(),
      name: z.string(),
      mode: modeSchema,
      modeKnown: z.boolean(),
      worstPriority: prioritySchema.nullable(),
      standingAlarms: z.number().int(),
      age: z.number().nullable().describe('seconds since the newest sample of the unit'),
    }),
  ),
});

export type UnitList = z.infer<typeof unitListSchema>;

export const pointListSchema = z.object({
  unit: z.string(),
  time: isoTimeSchema.nullable(),
  mode: modeSchema,
  points: z.array(readingSchema),
});
export type PointList = z.infer<typeof pointListSchema>;

const column = z.array(z.number().nullable());
export const historyColumnsSchema = z.object({
  unit: z.string(),
  point: z.string(),
  unit_of_measure: z.string(),
  bucketMs: z.number().int().describe('ceil((to − from) / buckets), aligned at `from`, half-open'),
  resolution: z.enum(['second', 'minute']),
  start: z.array(isoTimeSchema),
  min: column,
  mean: column,
  max: column,
  count: z.array(z.number().int()),
});
export type HistoryColumns = z.infer<typeof historyColumnsSchema>;

export const historyQuerySchema = z.strictObject({
  unit: z.string().min(1),
  point: z.string().min(1),
  from: isoTimeSchema,
  to: isoTimeSchema,
  buckets: z.coerce.number().int().min(1).max(5000).default(600),
});

export const journalQuerySchema = z.strictObject({
  from: isoTimeSchema.optional(),
  to: isoTimeSchema.optional(),
  after: z.coerce.number().int().min(0).optional(),
});

export const intakeSchema = z.object({
  messages: z.number().int(),
  samples: z.number().int().describe('samples accepted'),
  late: z.number().int().describe('samples older than the newest of their point: kept in history only'),
  repeated: z.number().int().describe('samples that said again what their point has already: not kept again'),
  retained: z.number().int().describe('messages that the broker had kept for us'),
  topics: z.array(z.object({ topic: z.string(), messages: z.number().int(), refused: z.number().int() })),
  otherTopics: z.object({ messages: z.number().int(), refused: z.number().int() }),
  refusals: z.array(
    z.object({
      code: z.string(),
      count: z.number().int(),
      example: z.object({ topic: z.string(), message: z.string(), payloadStart: z.string(), time: isoTimeSchema }),
    }),
  ),
});
export type Intake = z.infer<typeof intakeSchema>;

/** One row a route; the OpenAPI document and the contract test are made from this table. `faults` are codes of its own, beside those of every route. */
export const routeTable = [
  { method: 'get', path: '/api/health', reply: healthSchema, query: null, body: null, faults: [] },
  { method: 'get', path: '/api/site', reply: siteSchema, query: null, body: null, faults: [] },
  {
    method: 'post',
    path: '/api/site/check',
    reply: siteCheckSchema,
    query: null,
    body: checkSiteRequestSchema,
    faults: [],
  },
  { method: 'get', path: '/api/site/state', reply: siteStateSchema, query: null, body: null, faults: [] },
  {
    method: 'post',
    path: '/api/site/reload',
    reply: siteStateSchema,
    query: null,
    body: reloadSiteRequestSchema,
    faults: [],
  },
  { method: 'get', path: '/api/units', reply: unitListSchema, query: null, body: null, faults: [] },
  {
    method: 'get',
    path: '/api/units/{unit}/points',
    reply: pointListSchema,
    query: null,
    body: null,
    faults: ['UNIT_UNKNOWN'],
  },
  {
    method: 'get',
    path: '/api/units/{unit}/limits',
    reply: limitListSchema,
    query: null,
    body: null,
    faults: ['UNIT_UNKNOWN'],
  },
  {
    method: 'get',
    path: '/api/units/{unit}/setup',
    reply: setupSchema,
    query: null,
    body: null,
    faults: ['UNIT_UNKNOWN'],
  },
  {
    method: 'get',
    path: '/api/history',
    reply: historyColumnsSchema,
    query: historyQuerySchema,
    body: null,
    faults: ['UNIT_UNKNOWN', 'POINT_UNKNOWN', 'HISTORY_UNAVAILABLE'],
  },
  { method: 'get', path: '/api/alarms', reply: alarmListSchema, query: null, body: null, faults: [] },
  {
    method: 'get',
    path: '/api/alarms/journal',
    reply: journalPageSchema,
    query: journalQuerySchema,
    body: null,
    faults: [],
  },
  {
    method: 'post',
    path: '/api/alarms/{id}/acknowledge',
    reply: alarmSchema,
    query: null,
    body: acknowledgeRequestSchema,
    faults: [
      'ACTOR_UNNAMED',
      'ACTOR_NOT_LOCAL',
      'ALARM_UNKNOWN',
      'ALARM_ALREADY_ACKNOWLEDGED',
      'ALARM_NOT_LATCHED',
      'ALARM_STILL_ACTIVE',
      'JOURNAL_UNAVAILABLE',
    ],
  },
  { method: 'get', path: '/api/alerts', reply: alertListSchema, query: null, body: null, faults: [] },
  { method: 'get', path: '/api/permits', reply: permitListSchema, query: null, body: null, faults: [] },
  {
    method: 'post',
    path: '/api/permits',
    reply: permitSchema,
    query: null,
    body: openPermitRequestSchema,
    faults: [
      'ACTOR_UNNAMED',
      'ACTOR_NOT_LOCAL',
      'PERMIT_UNIT_UNKNOWN',
      'PERMIT_BRANCH_UNKNOWN',
      'PERMIT_TIME',
      'PERMIT_OPEN_ALREADY',
      'JOURNAL_UNAVAILABLE',
    ],
  },
  {
    method: 'post',
    path: '/api/permits/{id}/close',
    reply: permitSchema,
    query: null,
    body: closePermitRequestSchema,
    faults: ['ACTOR_UNNAMED', 'ACTOR_NOT_LOCAL', 'PERMIT_UNKNOWN', 'JOURNAL_UNAVAILABLE'],
  },
  { method: 'get', path: '/api/intake', reply: intakeSchema, query: null, body: null, faults: [] },
  {
    method: 'get',
    path: '/api/intake/last',
    reply: lastPayloadSchema,
    query: lastPayloadQuerySchema,
    body: null,
    faults: ['TOPIC_UNKNOWN'],
  },
  {
    method: 'get',
    path: '/api/demo/faults',
    reply: demoStateSchema,
    query: null,
    body: null,
    faults: ['DEMO_ABSENT'],
  },
  {
    method: 'post',
    path: '/api/demo/faults',
    reply: demoStateSchema,
    query: null,
    body: demoCommandSchema,
    faults: ['DEMO_ABSENT', 'DEMO_SILENT', 'DEMO_COMMAND_REFUSED', 'ACTOR_NOT_LOCAL'],
  },
] as const;

type Route = (typeof routeTable)[number];
/** `get /api/health`: a path may have several methods. */
export type RouteKey = Route extends infer R ? (R extends Route ? `${R['method']} ${R['path']}` : never) : never;
export const routeKey = (route: Route): RouteKey => `${route.method} ${route.path}` as RouteKey;
