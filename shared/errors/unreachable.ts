import { CodedError } from './coded-error';

/** Closes an exhaustive switch: the compiler refuses a case that was forgotten. */
export function unreachable(value: never): never {
  throw new CodedError('UNREACHABLE', `no case for ${JSON.stringify(value)}; add one where this was thrown`);
}
