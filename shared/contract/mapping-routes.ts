import {
  listenRequestSchema,
  mappingQuerySchema,
  mappingSchema,
  stopListeningRequestSchema,
  triedLinesSchema,
  tryLinesRequestSchema,
} from './mapping';
import type { RouteRow } from './route-row';

/** Help for a plant whose gateways have names of their own: listen, see what it could be, and try the lines. */
export const mappingRoutes = [
  {
    method: 'get',
    path: '/api/mapping',
    right: 'changeSite',
    reply: mappingSchema,
    query: mappingQuerySchema,
    body: null,
    faults: ['UNIT_UNKNOWN'],
  },
  {
    method: 'post',
    path: '/api/mapping/listen',
    right: 'changeSite',
    reply: mappingSchema,
    query: null,
    body: listenRequestSchema,
    faults: ['FILTER_MALFORMED', 'LISTENING_ALREADY'],
  },
  {
    method: 'post',
    path: '/api/mapping/stop',
    right: 'changeSite',
    reply: mappingSchema,
    query: null,
    body: stopListeningRequestSchema,
    faults: [],
  },
  {
    method: 'post',
    path: '/api/mapping/try',
    right: 'changeSite',
    reply: triedLinesSchema,
    query: null,
    body: tryLinesRequestSchema,
    faults: ['SITE_CHECK_OVERTAKEN'],
  },
] as const satisfies readonly RouteRow[];
