import type { RouteRow } from './route-row';
import { alarmSpansQuerySchema, alarmSpansSchema, pastUncertaintySchema, uncertaintyQuerySchema } from './trends';

/** What is drawn beside the history of a point. */
export const trendRoutes = [
  {
    method: 'get',
    path: '/api/alarms/spans',
    right: 'look',
    reply: alarmSpansSchema,
    query: alarmSpansQuerySchema,
    body: null,
    faults: ['UNIT_UNKNOWN'],
  },
  {
    method: 'get',
    path: '/api/history/uncertainty',
    right: 'look',
    reply: pastUncertaintySchema,
    query: uncertaintyQuerySchema,
    body: null,
    faults: ['UNIT_UNKNOWN', 'POINT_UNKNOWN', 'UNCERTAINTY_BUSY', 'HISTORY_UNAVAILABLE'],
  },
] as const satisfies readonly RouteRow[];
