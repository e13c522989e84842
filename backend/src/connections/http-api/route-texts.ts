import type { routeTable } from '@ebbline/shared/contract/http-api';

/** What each route is for, in one line; the compiler refuses a route without. */
export const routeTexts: Readonly<
  Record<(typeof routeTable)[number]['path'], { readonly operationId: string; readonly summary: string }>
> = {
  '/api/health': { operationId: 'health', summary: 'How the program itself is: what is unwell and what to do.' },
  '/api/site': { operationId: 'site', summary: 'What there is: halls, units, branches, plates and wetted places.' },
  '/api/units': { operationId: 'units', summary: 'Every unit in a line: mode, worst alarm, age of its newest sample.' },
  '/api/units/{unit}/points': {
    operationId: 'points',
    summary: 'Every point of a unit and of its hall, measured and derived, now.',
  },
  '/api/history': {
    operationId: 'history',
    summary: 'A point over time, as columns of equal buckets; null where nothing was measured.',
  },
  '/api/alarms': {
    operationId: 'alarms',
    summary: 'Standing alarms as the journal has them, whoever most needs a person first.',
  },
  '/api/alarms/journal': { operationId: 'journal', summary: 'Every change and action in order, 500 a page.' },
  '/api/alarms/{id}/acknowledge': {
    operationId: 'acknowledge',
    summary: 'Says that a person has seen the alarm; confirmed once it is committed.',
  },
  '/api/intake': {
    operationId: 'intake',
    summary: 'What has come in by topic, and what was refused and why, with an example of each.',
  },
};
