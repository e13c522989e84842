import { Catch, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import { problemTable } from './error-to-status';
import { toProblem } from './problem-error';
import { toProblemError } from './to-problem-error';
import type { WebRequest, WebResponse } from './web-types';

/** The border: every refusal and every fault leaves as `application/problem+json`. */
@Catch()
export class ProblemFilter implements ExceptionFilter {
  /** @param report where a fault of this program is told; refusals are none */
  constructor(private readonly report: (fault: unknown) => void) {}

  catch(thrown: unknown, host: ArgumentsHost): void {
    const http = host.switchToHttp();
    const problem = toProblemError(thrown);
    if (problem.code === 'INTERNAL') this.report(thrown);
    sendProblem(http.getRequest<WebRequest>(), http.getResponse<WebResponse>(), problem);
  }
}

export function sendProblem(
  request: WebRequest,
  response: WebResponse,
  { code, detail, members }: ReturnType<typeof toProblemError>,
): void {
  if (response.headersSent) return;
  const { status } = problemTable[code];
  // RFC 9110 section 15.5.2; of this scheme browsers ask nobody for a password.
  if (status === 401) response.set('WWW-Authenticate', 'Bearer realm="Ebbline"');
  const wait = members['retryAfterSeconds'];
  if (typeof wait === 'number') response.set('Retry-After', String(wait));
  response
    .status(status)
    .set('Cache-Control', 'no-store')
    .type('application/problem+json')
    .send(JSON.stringify(toProblem(code, detail, request.path, members)));
}
