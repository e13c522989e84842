import type { trendRoutes } from '@ebbline/shared/contract/trend-routes';

type Row = (typeof trendRoutes)[number];
type Key = Row extends infer R ? (R extends Row ? `${R['method']} ${R['path']}` : never) : never;

/** What each route of what is drawn beside a trend is for, in one line. */
export const trendRouteTexts: Readonly<Record<Key, { readonly operationId: string; readonly summary: string }>> = {
  'get /api/alarms/spans': {
    operationId: 'alarmSpans',
    summary: 'When which alarm of some units stood within a period, by the journal.',
  },
  'get /api/history/uncertainty': {
    operationId: 'historyUncertainty',
    summary: 'How sure past values of points were, worked out anew from what was measured at some moments of a period.',
  },
};
