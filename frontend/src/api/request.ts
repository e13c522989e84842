import { problemSchema } from '@ebbline/shared/contract/problem';
import { checkWithoutEval } from '@ebbline/shared/contract/without-eval';
import type { Failure, Result } from '@ebbline/shared/errors/result';
import { fail, ok } from '@ebbline/shared/errors/result';
import { csrfOfSession, noteRefusal } from './entry-marks';
import { noteServerDate } from './server-time';

checkWithoutEval();

/** A check of shape from the contract; every schema there is one. */
export interface Shape<Value> {
  safeParse(given: unknown): { success: true; data: Value } | { success: false };
}

export interface RequestOptions {
  readonly body?: unknown;
  /** Default 8 s. */
  readonly timeOutMs?: number;
  /** True where a person did something: it puts off the end by idling. Default: with a body, so with every action. */
  readonly acts?: boolean;
  /** Default: the browser's own. */
  readonly fetch?: typeof fetch;
}

/** Why a request came to nothing. */
export interface RequestFault extends Failure {
  /** Where the server says from when on it is worth asking again. */
  readonly retryAfterSeconds?: number;
}

const defaultTimeOutMs = 8000;

/**
 * One request to the server, its reply checked against the contract before anything is shown.
 * Codes of its own: REQUEST_TIMED_OUT and REQUEST_NOT_SENT, of what is only read READING_TIMED_OUT and READING_NOT_SENT,
 * REPLY_MALFORMED; else the code of the server's problem.
 */
export async function request<Value>(
  path: string,
  shape: Shape<Value>,
  options: RequestOptions = {},
): Promise<Result<Value, RequestFault>> {
  const send = options.fetch ?? fetch;
  let reply: Response;
  let body: unknown;
  try {
    reply = await send(path, {
      signal: AbortSignal.timeout(options.timeOutMs ?? defaultTimeOutMs),
      headers: headersFor(options),
      ...(options.body === undefined ? {} : { method: 'POST', body: JSON.stringify(options.body) }),
    });
    noteServerDate(reply.headers.get('date'));
    body = await reply.json();
  } catch (cause) {
    return fail(failureOf(path, cause, options.body === undefined));
  }
  if (!reply.ok) {
    const fault = problemOf(path, reply, body);
    noteRefusal(fault.code);
    return fail(fault);
  }
  const parsed = shape.safeParse(body);
  if (parsed.success) return ok(parsed.data);
  return fail({ code: 'REPLY_MALFORMED', message: `${path} answered in a form that the contract does not hold` });
}

function headersFor({ body, acts }: RequestOptions): Record<string, string> {
  const headers: Record<string, string> = { accept: 'application/json' };
  if (acts ?? body !== undefined) headers['x-ebbline-acts'] = '1';
  if (body === undefined) return headers;
  headers['content-type'] = 'application/json';
  const csrf = csrfOfSession();
  if (csrf !== null) headers['x-ebbline-csrf'] = csrf;
  return headers;
}

/** What failed to be read leaves nobody in doubt of what was done; words for it promise no more. */
function failureOf(path: string, cause: unknown, reads: boolean): Failure {
  const name = cause instanceof Error ? cause.name : '';
  if (name === 'TimeoutError' || name === 'AbortError')
    return { code: reads ? 'READING_TIMED_OUT' : 'REQUEST_TIMED_OUT', message: `${path} did not answer in time` };
  if (name === 'SyntaxError')
    return { code: 'REPLY_MALFORMED', message: `${path} answered with something that is not JSON` };
  return { code: reads ? 'READING_NOT_SENT' : 'REQUEST_NOT_SENT', message: `${path} can't be reached` };
}

function problemOf(path: string, { status, headers }: Response, body: unknown): RequestFault {
  const problem = problemSchema.safeParse(body);
  if (!problem.success) return { code: 'REPLY_MALFORMED', message: `${path} answered ${status} without saying why` };
  const { code, detail } = problem.data;
  const after = Number(headers.get('retry-after') ?? '');
  return { code, message: detail, ...(after > 0 ? { retryAfterSeconds: after } : {}) };
}
