import { acknowledgeRequestSchema, alarmListSchema, alarmSchema, journalPageSchema } from './alarm';
import { alertListSchema } from './alert';
import { energyQuerySchema, energyReportSchema } from './energy';
import { demoCommandSchema, demoStateSchema } from './demo-faults';
import { explanationSchema } from './explanation';
import { closePermitRequestSchema, openPermitRequestSchema, permitListSchema, permitSchema } from './permit';
import { checkSiteRequestSchema, reloadSiteRequestSchema, siteCheckSchema, siteStateSchema } from './site-state';
import { limitListSchema, lastPayloadQuerySchema, lastPayloadSchema, setupSchema } from './setup';
import {
  endTightnessRequestSchema,
  startTightnessRequestSchema,
  tightnessFaults,
  tightnessListSchema,
  tightnessTestSchema,
} from './tightness-test';
import {
  healthSchema,
  siteSchema,
  unitListSchema,
  pointListSchema,
  historyColumnsSchema,
  historyQuerySchema,
  journalQuerySchema,
  intakeSchema,
} from './http-api';

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
    faults: ['SITE_CHECK_OVERTAKEN'],
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
    path: '/api/units/{unit}/points/{point}/explanation',
    reply: explanationSchema,
    query: null,
    body: null,
    faults: ['UNIT_UNKNOWN', 'POINT_UNKNOWN'],
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
  {
    method: 'get',
    path: '/api/energy',
    reply: energyReportSchema,
    query: energyQuerySchema,
    body: null,
    faults: ['UNIT_UNKNOWN', 'HALL_UNKNOWN', 'ENERGY_RANGE', 'HISTORY_UNAVAILABLE'],
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
  {
    method: 'get',
    path: '/api/units/{unit}/tightness-tests',
    reply: tightnessListSchema,
    query: null,
    body: null,
    faults: ['UNIT_UNKNOWN'],
  },
  {
    method: 'post',
    path: '/api/units/{unit}/tightness-tests',
    reply: tightnessTestSchema,
    query: null,
    body: startTightnessRequestSchema,
    faults: ['ACTOR_UNNAMED', 'ACTOR_NOT_LOCAL', 'UNIT_UNKNOWN', ...tightnessFaults, 'JOURNAL_UNAVAILABLE'],
  },
  {
    method: 'get',
    path: '/api/units/{unit}/tightness-tests/{id}',
    reply: tightnessTestSchema,
    query: null,
    body: null,
    faults: ['UNIT_UNKNOWN', 'TIGHTNESS_UNKNOWN'],
  },
  {
    method: 'post',
    path: '/api/units/{unit}/tightness-tests/{id}/end',
    reply: tightnessTestSchema,
    query: null,
    body: endTightnessRequestSchema,
    faults: ['ACTOR_UNNAMED', 'ACTOR_NOT_LOCAL', 'UNIT_UNKNOWN', 'TIGHTNESS_UNKNOWN', 'JOURNAL_UNAVAILABLE'],
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
