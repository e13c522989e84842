import { CodedError } from '@ebbline/shared/errors/coded-error';
import { exportRoutes } from '@ebbline/shared/contract/export-routes';
import type { Right } from '@ebbline/shared/contract/people';
import { routeTable } from '@ebbline/shared/contract/route-table';

/** Addresses that answer something else than JSON of the table. */
const beside: readonly (readonly [key: string, right: Right | null])[] = [
  ['get /api/openapi.json', 'look'],
  ['get /api/metrics', 'look'],
  ['get /api/session/open-id/start', null],
  ['get /api/session/open-id/return', null],
];

const rightOf: ReadonlyMap<string, Right | null> = new Map([
  ...routeTable.map(({ method, path, right }) => [`${method} ${path}`, right] as const),
  ...exportRoutes.map(({ path, right }) => [`get ${path}`, right] as const),
  ...beside,
]);

export interface GuardedRoute {
  /** `get /api/units/{unit}/points`. */
  readonly key: string;
  readonly right: Right | null;
}

/**
 * What a route asks of who calls it.
 * @param method as sent; HEAD asks what GET asks (RFC 9110 section 9.3.2)
 * @param path as the framework has it: `/api/units/:unit/points`
 * @throws CodedError ROUTE_UNGUARDED where no table says: it is then answered by nobody
 */
export function rightOfRoute(method: string, path: string): GuardedRoute {
  const template = path.replaceAll(/:(\w+)/g, '{$1}').replace(/\/$/, '');
  const key = `${method === 'HEAD' ? 'get' : method.toLowerCase()} ${template}`;
  const right = rightOf.get(key);
  if (right === undefined) throw new CodedError('ROUTE_UNGUARDED', `no table says who may call ${key}`);
  return { key, right };
}
