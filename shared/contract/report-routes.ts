import { reportQuerySchema, reportSchema } from './report';
import type { RouteRow } from './route-row';

/** What is handed on as a whole. */
export const reportRoutes = [
  {
    method: 'get',
    path: '/api/report',
    right: 'look',
    reply: reportSchema,
    query: reportQuerySchema,
    body: null,
    faults: ['HALL_UNKNOWN', 'REPORT_PERIOD', 'HISTORY_UNAVAILABLE'],
  },
] as const satisfies readonly RouteRow[];
