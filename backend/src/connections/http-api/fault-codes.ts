import type { Right } from '@ebbline/shared/contract/people';
import { problemTable, type ProblemCode } from './error-to-status';

/** What of a row of a route table decides its faults. */
interface Route {
  readonly method: 'get' | 'post';
  readonly right: Right | null;
  readonly query: object | null;
  readonly body: object | null;
  readonly faults: readonly ProblemCode[];
}

/** What any route may answer, whatever was asked of it. */
const always: readonly ProblemCode[] = [
  'REQUEST_MALFORMED',
  'HOST_FOREIGN',
  'ORIGIN_FOREIGN',
  'NOT_SECURED',
  'METHOD_NOT_ALLOWED',
  'REQUEST_TOO_SLOW',
  'TOO_MANY_REQUESTS',
  'HEADERS_TOO_LARGE',
  'INTERNAL',
];
const withQuery: readonly ProblemCode[] = ['QUERY_MALFORMED'];
const withBody: readonly ProblemCode[] = ['BODY_MALFORMED', 'BODY_TOO_LARGE', 'BODY_NOT_JSON'];

/** Of who is not let in, and of pages that are not ours. */
const withRight: readonly ProblemCode[] = ['SIGN_IN_NEEDED', 'TOKEN_REFUSED', 'RIGHT_MISSING'];
const withCookie: readonly ProblemCode[] = ['CSRF_MISSING'];

/** Every code that a route may answer with: its own, and those of what stands around it. */
export const faultCodes = ({ query, body, faults, right, method }: Route): readonly ProblemCode[] => [
  ...(query === null ? [] : withQuery),
  ...(body === null ? [] : withBody),
  ...faults,
  ...(right === null ? [] : withRight),
  ...(right === null || method === 'get' ? [] : withCookie),
  ...always,
];

/** The same by status, ascending. */
export function statusesOf(route: Route): ReadonlyMap<number, readonly ProblemCode[]> {
  const codes = [...faultCodes(route)].sort((a, b) => problemTable[a].status - problemTable[b].status);
  const statuses = new Map<number, ProblemCode[]>();
  for (const code of codes)
    statuses.set(problemTable[code].status, [...(statuses.get(problemTable[code].status) ?? []), code]);
  return statuses;
}
