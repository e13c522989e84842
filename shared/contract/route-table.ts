import { actionRoutes } from './action-routes';
import { alarmListRoutes } from './alarm-list-routes';
import { alarmActionRoutes } from './alarm-action-routes';
import { limitTrialRoutes } from './limit-trial-routes';
import { alarmPerformanceRoutes } from './alarm-performance-routes';
import { guidedRoutes } from './guided-routes';
import { lookRoutes } from './look-routes';
import { mappingRoutes } from './mapping-routes';
import { noteRoutes } from './note-routes';
import { pastRoutes } from './past-routes';
import { peopleRoutes } from './people-routes';
import { reportRoutes } from './report-routes';
import { trendRoutes } from './trend-routes';

/** One row a route; the OpenAPI document, who may call it, and the contract test are made from this table. */
export const routeTable = [
  ...lookRoutes,
  ...pastRoutes,
  ...alarmPerformanceRoutes,
  ...actionRoutes,
  ...guidedRoutes,
  ...mappingRoutes,
  ...noteRoutes,
  ...reportRoutes,
  ...alarmActionRoutes,
  ...peopleRoutes,
  ...limitTrialRoutes,
  ...alarmListRoutes,
  ...trendRoutes,
] as const;

export type Route = (typeof routeTable)[number];
/** `get /api/health`: a path may have several methods. */
export type RouteKey = Route extends infer R ? (R extends Route ? `${R['method']} ${R['path']}` : never) : never;
export const routeKey = (route: Route): RouteKey => `${route.method} ${route.path}` as RouteKey;
