import {
  cancelGuidedRequestSchema,
  confirmGuidedRequestSchema,
  guidedFaults,
  guidedListSchema,
  guidedSurveySchema,
  guidedTestSchema,
  startGuidedRequestSchema,
} from './guided-test';
import type { RouteRow } from './route-row';

/** Guided tests: what a unit could have, and one taken step by step. */
export const guidedRoutes = [
  {
    method: 'get',
    path: '/api/guided-tests',
    right: 'look',
    reply: guidedSurveySchema,
    query: null,
    body: null,
    faults: [],
  },
  {
    method: 'get',
    path: '/api/units/{unit}/guided-tests',
    right: 'look',
    reply: guidedListSchema,
    query: null,
    body: null,
    faults: ['UNIT_UNKNOWN'],
  },
  {
    method: 'get',
    path: '/api/units/{unit}/guided-tests/{id}',
    right: 'look',
    reply: guidedTestSchema,
    query: null,
    body: null,
    faults: ['UNIT_UNKNOWN', 'GUIDED_UNKNOWN'],
  },
  {
    method: 'post',
    path: '/api/units/{unit}/guided-tests',
    right: 'measure',
    reply: guidedTestSchema,
    query: null,
    body: startGuidedRequestSchema,
    faults: ['ACTOR_DIFFERS', 'UNIT_UNKNOWN', ...guidedFaults, 'JOURNAL_UNAVAILABLE'],
  },
  {
    method: 'post',
    path: '/api/units/{unit}/guided-tests/{id}/confirm',
    right: 'measure',
    reply: guidedTestSchema,
    query: null,
    body: confirmGuidedRequestSchema,
    faults: ['ACTOR_DIFFERS', 'UNIT_UNKNOWN', ...guidedFaults, 'JOURNAL_UNAVAILABLE'],
  },
  {
    method: 'post',
    path: '/api/units/{unit}/guided-tests/{id}/cancel',
    right: 'measure',
    reply: guidedTestSchema,
    query: null,
    body: cancelGuidedRequestSchema,
    faults: ['ACTOR_DIFFERS', 'UNIT_UNKNOWN', 'GUIDED_UNKNOWN', 'GUIDED_ENDED', 'JOURNAL_UNAVAILABLE'],
  },
] as const satisfies readonly RouteRow[];
