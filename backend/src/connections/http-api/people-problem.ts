import type { Result } from '@ebbline/shared/errors/result';
import type { PeopleFault } from '../../ports/people';
import { ProblemError } from './problem-error';

/** What was asked of people and access, or the refusal as a problem. */
export function peopleAnswer<Value>(answer: Result<Value, PeopleFault>): Value {
  if (answer.ok) return answer.value;
  const { code, message, retryAfterSeconds } = answer.fault;
  throw new ProblemError(code, message, retryAfterSeconds === undefined ? {} : { retryAfterSeconds });
}
