import type { Problem } from '@ebbline/shared/contract/problem';
import { problemTable, type ProblemCode } from './error-to-status';

/** A refusal on its way to the border, where it becomes an RFC 9457 problem. */
export class ProblemError extends Error {
  constructor(
    readonly code: ProblemCode,
    readonly detail: string,
    /** Members of the problem beside those of the standard (RFC 9457 section 3.2). */
    readonly members: Readonly<Record<string, unknown>> = {},
  ) {
    super(`${code}: ${detail}`);
    this.name = 'ProblemError';
  }
}

/** @param instance the path that was asked for, without its query */
export function toProblem(
  code: ProblemCode,
  detail: string,
  instance: string,
  members: Readonly<Record<string, unknown>> = {},
): Problem {
  const { status, title } = problemTable[code];
  return { ...members, type: `urn:ebbline:problem:${code}`, title, status, detail, instance, code };
}
