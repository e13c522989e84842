import { hallTrailsSchema } from './hall-trails';
import { pastHallSchema, pastMarksQuerySchema, pastMarksSchema, pastQuerySchema, pastUnitSchema } from './past';
import type { RouteRow } from './route-row';

/** A past second as it stood, and what happened in a period. */
export const pastRoutes = [
  {
    method: 'get',
    path: '/api/past/halls/{hall}',
    right: 'look',
    reply: pastHallSchema,
    query: pastQuerySchema,
    body: null,
    faults: ['HALL_UNKNOWN', 'PAST_NOT_YET', 'PAST_BEFORE_RECORDS', 'PAST_NOT_KEPT', 'HISTORY_UNAVAILABLE'],
  },
  {
    method: 'get',
    path: '/api/past/halls/{hall}/trails',
    right: 'look',
    reply: hallTrailsSchema,
    query: pastQuerySchema,
    body: null,
    faults: ['HALL_UNKNOWN', 'PAST_NOT_YET', 'HISTORY_UNAVAILABLE'],
  },
  {
    method: 'get',
    path: '/api/past/units/{unit}',
    right: 'look',
    reply: pastUnitSchema,
    query: pastQuerySchema,
    body: null,
    faults: ['UNIT_UNKNOWN', 'PAST_NOT_YET', 'PAST_BEFORE_RECORDS', 'PAST_NOT_KEPT', 'HISTORY_UNAVAILABLE'],
  },
  {
    method: 'get',
    path: '/api/past/marks',
    right: 'look',
    reply: pastMarksSchema,
    query: pastMarksQuerySchema,
    body: null,
    faults: ['HALL_UNKNOWN', 'UNIT_UNKNOWN', 'HISTORY_UNAVAILABLE'],
  },
] as const satisfies readonly RouteRow[];
