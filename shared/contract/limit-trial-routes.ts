import { limitTrialSchema, startTrialRequestSchema } from './limit-trial';
import type { RouteRow } from './route-row';

/** Limits tried over what was recorded: nothing that runs is changed by it. */
export const limitTrialRoutes = [
  {
    method: 'post',
    path: '/api/limit-trials',
    right: 'tryLimits',
    reply: limitTrialSchema,
    query: null,
    body: startTrialRequestSchema,
    faults: [
      'TRIAL_ENTRY_UNKNOWN',
      'TRIAL_ENTRY_NOT_TRIED',
      'TRIAL_SETTING_ABSENT',
      'TRIAL_RANGE',
      'UNIT_UNKNOWN',
      'TRIAL_UNIT_WITHOUT',
      'TRIALS_RUNNING',
    ],
  },
  {
    method: 'get',
    path: '/api/limit-trials/{id}',
    right: 'look',
    reply: limitTrialSchema,
    query: null,
    body: null,
    faults: ['TRIAL_UNKNOWN'],
  },
  {
    method: 'post',
    path: '/api/limit-trials/{id}/cancel',
    right: 'tryLimits',
    reply: limitTrialSchema,
    query: null,
    body: null,
    faults: ['TRIAL_UNKNOWN'],
  },
] as const satisfies readonly RouteRow[];
