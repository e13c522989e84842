import { CodedError } from '@ebbline/shared/errors/coded-error';
import { ProblemError } from './problem-error';

/** What is answered where history could not be read: which file is damaged, or that the store is away; else the fault itself. */
export function historyProblem(cause: unknown, isWell: boolean): unknown {
  if (cause instanceof CodedError && cause.code === 'HISTORY_READ_FAILED') {
    const said = cause.message.replace(`${cause.code}: `, '');
    return new ProblemError('HISTORY_UNAVAILABLE', `${said.charAt(0).toUpperCase()}${said.slice(1)}.`);
  }
  return isWell
    ? cause
    : new ProblemError(
        'HISTORY_UNAVAILABLE',
        'The history store does not answer; /api/health says why. It is tried again.',
      );
}
