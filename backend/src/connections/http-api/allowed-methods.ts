import { routeTable } from '@ebbline/shared/contract/route-table';
import { addressesBeside } from './route-template';

const routes = [...new Set(routeTable.map(({ path }) => path))].map((path) => ({
  pattern: new RegExp(`^${path.replaceAll('.', '\\.').replaceAll(/\{\w+\}/g, '[^/]+')}/?$`),
  methods: withHead(routeTable.filter((route) => route.path === path).map(({ method }) => method.toUpperCase())),
}));
const reading: readonly string[] = ['GET', 'HEAD'];

/** Which methods an address knows (RFC 9110 section 9.1); null where there is no such address. Outside of the API all is read only. */
export function allowedMethods(path: string): readonly string[] | null {
  if (addressesBeside.some((address) => address === path)) return reading;
  if (!/^\/api(\/|$)/.test(path)) return reading;
  return routes.find(({ pattern }) => pattern.test(path))?.methods ?? null;
}

/** Whatever answers GET answers HEAD (RFC 9110 section 9.3.2). */
function withHead(methods: readonly string[]): readonly string[] {
  return methods.includes('GET') ? [...methods, 'HEAD'] : methods;
}
