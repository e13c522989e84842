import { HttpException } from '@nestjs/common';
import { ProblemError } from './problem-error';

/** Whatever was thrown while a request was answered, as one of our problems. */
export function toProblemError(thrown: unknown): ProblemError {
  if (thrown instanceof ProblemError) return thrown;
  switch (statusOf(thrown)) {
    case 400:
      return new ProblemError(
        'REQUEST_MALFORMED',
        'The address or the body can not be read; send a JSON object as the API document says.',
      );
    case 404:
      return new ProblemError(
        'ROUTE_UNKNOWN',
        'There is nothing at this address; see /api/openapi.json for what there is.',
      );
    case 413:
      return new ProblemError(
        'BODY_TOO_LARGE',
        'The body is too large: 16 KiB for actions, 4 MiB for a site file; shorten the comment.',
      );
    case 415:
      return new ProblemError('BODY_NOT_JSON', 'Send the body as application/json in UTF-8.');
    default:
      return new ProblemError(
        'INTERNAL',
        'Something unexpected went wrong; the program has written it to its error output.',
      );
  }
}

/** Of the errors of the web framework and its body reader; any other has none. */
function statusOf(thrown: unknown): number | null {
  if (typeof thrown !== 'object' || thrown === null) return null;
  if (thrown instanceof HttpException) return thrown.getStatus();
  return 'status' in thrown && typeof thrown.status === 'number' ? thrown.status : null;
}
