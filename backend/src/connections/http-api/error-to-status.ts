/** Every code that the HTTP interface answers with, its status and its title. Codes are never reused. */
export const problemTable = {
  QUERY_MALFORMED: { status: 400, title: 'The query is not as it should be' },
  BODY_MALFORMED: { status: 400, title: 'The body is not as it should be' },
  REQUEST_MALFORMED: { status: 400, title: 'The request is not as it should be' },
  ACTOR_UNNAMED: { status: 400, title: 'Nobody is named' },
  ACTOR_NOT_LOCAL: { status: 403, title: 'Not from this machine' },
  HOST_FOREIGN: { status: 403, title: 'Another address' },
  ORIGIN_FOREIGN: { status: 403, title: 'Another page' },
  ROUTE_UNKNOWN: { status: 404, title: 'No such address' },
  UNIT_UNKNOWN: { status: 404, title: 'No such unit' },
  POINT_UNKNOWN: { status: 404, title: 'No such point' },
  ALARM_UNKNOWN: { status: 404, title: 'No such alarm stands' },
  METHOD_NOT_ALLOWED: { status: 405, title: 'Not with this method' },
  REQUEST_TOO_SLOW: { status: 408, title: 'The request took too long' },
  ALARM_ALREADY_ACKNOWLEDGED: { status: 409, title: 'Already acknowledged' },
  ALARM_NOT_LATCHED: { status: 409, title: 'Not latched' },
  ALARM_STILL_ACTIVE: { status: 409, title: 'Still active' },
  BODY_TOO_LARGE: { status: 413, title: 'The body is too large' },
  BODY_NOT_JSON: { status: 415, title: 'Only JSON is taken' },
  HEADERS_TOO_LARGE: { status: 431, title: 'The headers are too large' },
  INTERNAL: { status: 500, title: 'A fault of this program' },
  JOURNAL_UNAVAILABLE: { status: 503, title: 'The journal can not be written' },
  HISTORY_UNAVAILABLE: { status: 503, title: 'The history can not be read' },
} as const satisfies Record<string, { readonly status: number; readonly title: string }>;

export type ProblemCode = keyof typeof problemTable;
