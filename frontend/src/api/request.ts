import { problemSchema } from '@ebbline/shared/contract/problem';
import { checkWithoutEval } from '@ebbline/shared/contract/without-eval';
import type { Failure, Result } from '@ebbline/shared/errors/result';
import { fail, ok } from '@ebbline/shared/errors/result';

checkWithoutEval();

/** A check of shape from the contract; every schema there is one. */
export interface Shape<Value> {
  safeParse(given: unknown): { success: true; data: Value } | { success: false };
}

export interface RequestOptions {
  readonly body?: unknown;
  /** Default 8 s. */
  readonly timeOutMs?: number;
  /** Default: the browser's own. */
  readonly fetch?: typeof fetch;
}

const defaultTimeOutMs = 8000;

/**
 * One request to the server, its reply checked against the contract before anything is shown.
 * Codes of its own: REQUEST_TIMED_OUT, REQUEST_NOT_SENT, REPLY_MALFORMED; else the code of the server's problem.
 */
export async function request<Value>(
  path: string,
  shape: Shape<Value>,
  options: RequestOptions = {},
): Promise<Result<Value>> {
  const send = options.fetch ?? fetch;
  let reply: Response;
  let body: unknown;
  try {
    reply = await send(path, {
      signal: AbortSignal.timeout(options.timeOutMs ?? defaultTimeOutMs),
      headers: {
        accept: 'application/json',
        ...(options.body === undefined ? {} : { 'content-type': 'application/json' }),
      },
      ...(options.body === undefined ? {} : { method: 'POST', body: JSON.stringify(options.body) }),
    });
    body = await reply.json();
  } catch (cause) {
    return fail(failureOf(path, cause));
  }
  if (!reply.ok) return fail(problemOf(path, reply.status, body));
  const parsed = shape.safeParse(body);
  if (parsed.success) return ok(parsed.data);
  return fail({ code: 'REPLY_MALFORMED', message: `${path} answered in a form that the contract does not hold` });
}

function failureOf(path: string, cause: unknown): Failure {
  const name = cause instanceof Error ? cause.name : '';
  if (name === 'TimeoutError' || name === 'AbortError')
    return { code: 'REQUEST_TIMED_OUT', message: `${path} did not answer in time` };
  if (name === 'SyntaxError')
    return { code: 'REPLY_MALFORMED', message: `${path} answered with something that is not JSON` };
  return { code: 'REQUEST_NOT_SENT', message: `${path} can't be reached` };
}

function problemOf(path: string, status: number, body: unknown): Failure {
  const problem = problemSchema.safeParse(body);
  if (problem.success) return { code: problem.data.code, message: problem.data.detail };
  return { code: 'REPLY_MALFORMED', message: `${path} answered ${status} without saying why` };
}
