import type { pastRoutes } from '@ebbline/shared/contract/past-routes';

type Row = (typeof pastRoutes)[number];
type Key = Row extends infer R ? (R extends Row ? `${R['method']} ${R['path']}` : never) : never;

/** What each route of past seconds is for, in one line. */
export const pastRouteTexts: Readonly<Record<Key, { readonly operationId: string; readonly summary: string }>> = {
  'get /api/past/halls/{hall}': {
    operationId: 'pastHall',
    summary: 'A hall as it stood at a past second: recorded values, and alarms and permits as the journal had them.',
  },
  'get /api/past/halls/{hall}/trails': {
    operationId: 'pastHallTrails',
    summary:
      'The hour of each of its loops that ended with a past second, minute by minute, one look a minute; apart, as it takes longer than the moment.',
  },
  'get /api/past/units/{unit}': {
    operationId: 'pastUnit',
    summary: 'The same of a unit: every point, the water’s way, its alarms, alerts and permits.',
  },
  'get /api/past/marks': {
    operationId: 'pastMarks',
    summary: 'What happened within a day at most: alarms raised and gone, floods, permits, and gaps in recording.',
  },
};
