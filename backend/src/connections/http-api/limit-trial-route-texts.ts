import type { limitTrialRoutes } from '@ebbline/shared/contract/limit-trial-routes';

type Row = (typeof limitTrialRoutes)[number];
type Key = Row extends infer R ? (R extends Row ? `${R['method']} ${R['path']}` : never) : never;

/** What each route of limit trials is for, in one line. */
export const limitTrialRouteTexts: Readonly<Record<Key, { readonly operationId: string; readonly summary: string }>> = {
  'post /api/limit-trials': {
    operationId: 'startLimitTrial',
    summary: 'Runs a proposed setting of an alarm over what was recorded, beside the live one. Changes nothing.',
  },
  'get /api/limit-trials/{id}': {
    operationId: 'limitTrial',
    summary: 'How far a trial is, and what both settings raised, when and for how long.',
  },
  'post /api/limit-trials/{id}/cancel': {
    operationId: 'cancelLimitTrial',
    summary: 'Ends a running trial with what it has found so far.',
  },
};
