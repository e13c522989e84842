import type { Edge } from '../../ports/edge';
import { allowedMethods } from './allowed-methods';
import { ProblemError } from './problem-error';
import { sendProblem } from './problem.filter';
import type { Next, WebRequest, WebResponse } from './web-types';

/** Lets through what comes from here, with a method that the address knows, and bodies that are JSON; runs before anything is read of a body. */
export const guardRequests =
  (edge: Pick<Edge, 'refusalOf'>) =>
  (request: WebRequest, response: WebResponse, next: Next): void => {
    const refusal = edge.refusalOf(request);
    const refuse = (problem: ProblemError): void => sendProblem(request, response, problem);
    if (refusal !== null) {
      refuse(new ProblemError(refusal.code, refusal.message));
      return;
    }
    const allowed = allowedMethods(request.path);
    if (allowed !== null && !allowed.includes(request.method)) {
      response.set('Allow', allowed.join(', '));
      refuse(
        new ProblemError('METHOD_NOT_ALLOWED', `This address knows ${allowed.join(', ')}; see /api/openapi.json.`),
      );
      return;
    }
    if (!reads(request.method) && !isJson(one(request.headers['content-type']))) {
      refuse(new ProblemError('BODY_NOT_JSON', 'Send the body as application/json in UTF-8.'));
      return;
    }
    if (request.path.startsWith('/api/')) response.set('Cache-Control', 'no-store');
    next();
  };

const reads = (method: string): boolean => method === 'GET' || method === 'HEAD';

/** RFC 8259 section 8.1: JSON between systems is UTF-8. */
const isJson = (contentType: string | undefined): boolean =>
  /^application\/json\s*(;\s*charset="?utf-8"?\s*)?$/i.test(contentType ?? '');

const one = (header: string | string[] | undefined): string | undefined => (Array.isArray(header) ? header[0] : header);
