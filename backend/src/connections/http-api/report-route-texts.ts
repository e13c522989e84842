import type { reportRoutes } from '@ebbline/shared/contract/report-routes';

type Row = (typeof reportRoutes)[number];
type Key = Row extends infer R ? (R extends Row ? `${R['method']} ${R['path']}` : never) : never;

/** What the route of the report is for, in one line. */
export const reportRouteTexts: Readonly<Record<Key, { readonly operationId: string; readonly summary: string }>> = {
  'get /api/report': {
    operationId: 'report',
    summary:
      'What one shift hands to the next: standing, set aside, permits, line-up, top-up, changes, notes; and the figures of its period.',
  },
};
