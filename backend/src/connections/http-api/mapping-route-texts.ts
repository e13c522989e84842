import type { mappingRoutes } from '@ebbline/shared/contract/mapping-routes';

type Row = (typeof mappingRoutes)[number];
type Key = Row extends infer R ? (R extends Row ? `${R['method']} ${R['path']}` : never) : never;

/** What each route of the mapping help is for, in one line. */
export const mappingRouteTexts: Readonly<Record<Key, { readonly operationId: string; readonly summary: string }>> = {
  'get /api/mapping': {
    operationId: 'mapping',
    summary: 'What was heard beside the site file, which points it could be and why, with the lines for the site file.',
  },
  'post /api/mapping/listen': {
    operationId: 'listenForMapping',
    summary: 'Listens to a topic filter on a connection of its own, for at most 15 minutes. Changes nothing.',
  },
  'post /api/mapping/stop': {
    operationId: 'stopListening',
    summary: 'Ends listening; what was heard stays to be looked at.',
  },
  'post /api/mapping/try': {
    operationId: 'tryLines',
    summary: 'Says what would be said of the site file with these lines in a copy of it. Changes nothing.',
  },
};
