import { alarmPerformanceSchema, performanceQuerySchema } from './alarm-performance';
import type { RouteRow } from './route-row';

/** How well the alarms served. */
export const alarmPerformanceRoutes = [
  {
    method: 'get',
    path: '/api/alarms/performance',
    right: 'look',
    reply: alarmPerformanceSchema,
    query: performanceQuerySchema,
    body: null,
    faults: ['HALL_UNKNOWN'],
  },
] as const satisfies readonly RouteRow[];
