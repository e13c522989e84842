import type { Edge } from '../../ports/edge';
import type { RateKind, RateLimits } from '../../ports/rate-limits';
import { ProblemError } from './problem-error';
import { sendProblem } from './problem.filter';
import type { Next, WebRequest, WebResponse } from './web-types';

/** Asked by whatever keeps programs running; answering costs less than refusing would. */
const free = new Set(['/api/health/alive', '/api/health/ready']);
/** Where secrets are guessed, if anywhere. */
const signIns = new Set([
  '/api/session/sign-in',
  '/api/session/demo',
  '/api/session/password',
  '/api/session/set-up',
  '/api/session/open-id/start',
  '/api/session/open-id/return',
]);

/** So much a station and kind of request; more is answered with 429 and when to come again (RFC 6585 section 4). */
export const limitRequests =
  (edge: Pick<Edge, 'stationOf'>, limits: RateLimits) =>
  (request: WebRequest, response: WebResponse, next: Next): void => {
    const path = plain(request.path);
    if (free.has(path)) {
      next();
      return;
    }
    limits.waitOf(kindOf(request.method, path), edge.stationOf(request)).then((waitS) => {
      if (waitS === null) {
        next();
        return;
      }
      response.set('Retry-After', String(waitS));
      const detail = `This station asks for more than it may; come again in ${waitS} s.`;
      sendProblem(request, response, new ProblemError('TOO_MANY_REQUESTS', detail));
    }, next);
  };

/** Routes are found in any case of letters and with a slash at the end too, so they are counted alike. */
const plain = (path: string): string => path.toLowerCase().replace(/\/+$/, '');

function kindOf(method: string, path: string): RateKind {
  if (signIns.has(path)) return 'signIn';
  return method === 'GET' || method === 'HEAD' ? 'read' : 'action';
}
