import type { SessionState } from '@ebbline/shared/contract/people';
import type { Result } from '@ebbline/shared/errors/result';
import { changePassword, endSession, setUpPassword, signIn, signInDemo } from '../api/session';
import { problemText } from '../text/problem-text';
import { holdSession } from './use-session';

/** What came of a wish to come in. */
export type EntryAnswer =
  | { readonly ok: true }
  | { readonly ok: false; readonly code: string; readonly text: string; readonly waitSeconds: number | null };

interface Refusal {
  readonly code: string;
  readonly message: string;
  readonly retryAfterSeconds?: number;
}

const key = 'ebbline.operator';

/** The name last used on this device where a name is all that is asked for: a convenience, no proof. */
export const rememberedName = (): string => localStorage.getItem(key) ?? '';

async function take(reply: Promise<Result<SessionState, Refusal>>): Promise<EntryAnswer> {
  const answer = await reply;
  if (answer.ok) {
    holdSession(answer.value);
    return { ok: true };
  }
  const { code, message, retryAfterSeconds } = answer.fault;
  return { ok: false, code, text: problemText(code, message), waitSeconds: retryAfterSeconds ?? null };
}

export const enterByPassword = (name: string, password: string): Promise<EntryAnswer> =>
  take(signIn({ name, password }));

export async function enterDemo(name: string): Promise<EntryAnswer> {
  const answer = await take(signInDemo({ name }));
  if (answer.ok) localStorage.setItem(key, name);
  return answer;
}

/** @param link the part of the address after # @param name null: the admin who made the link chose it */
export const setUp = (link: string, name: string | null, password: string): Promise<EntryAnswer> =>
  take(setUpPassword({ link, password, ...(name === null ? {} : { name }) }));

export const renewPassword = (old: string, password: string): Promise<EntryAnswer> =>
  take(changePassword({ old, password }));

/** Ends this session, or all of this person's. The caller leaves the page: nothing of what was seen stays in it. */
export async function leave(everywhere: boolean): Promise<EntryAnswer> {
  const answer = await endSession(everywhere);
  if (answer.ok) return { ok: true };
  const { code, message } = answer.fault;
  return { ok: false, code, text: problemText(code, message), waitSeconds: null };
}
