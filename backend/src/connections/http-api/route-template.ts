import { exportRoutes } from '@ebbline/shared/contract/export-routes';
import { routeTable } from '@ebbline/shared/contract/route-table';

/** Addresses that answer something else than the table's JSON. */
export const addressesBeside: readonly string[] = [
  '/api/openapi.json',
  '/api/metrics',
  ...exportRoutes.map(({ path }) => path),
];

const templates = [...new Set<string>(routeTable.map(({ path }) => path))].map((template) => ({
  template,
  pattern: new RegExp(`^${template.replaceAll('.', '\\.').replaceAll(/\{\w+\}/g, '[^/]+')}/?$`),
}));

/** The template of the route that an address leads to: one of a few that are known beforehand, whatever is asked for. */
export function routeTemplate(path: string): string {
  const beside = addressesBeside.find((address) => address === path);
  if (beside !== undefined) return beside;
  if (!/^\/api(\/|$)/.test(path)) return 'screens';
  return templates.find(({ pattern }) => pattern.test(path))?.template ?? 'unknown';
}
