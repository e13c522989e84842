import type { PeopleFault } from '../../ports/people';
import { fail } from '@ebbline/shared/errors/result';

type Code = PeopleFault['code'];

const said = {
  SIGN_IN_REFUSED: 'Name or password is not right. Try again, or ask an admin for a link to set a new password.',
  DEMO_SIGN_IN_ABSENT: 'One click signs in on the demo site only, and at this machine. Sign in with a password.',
  SET_UP_LINK_UNKNOWN: 'This link was used, is out of time, or never was one. Ask an admin for a new one.',
  PASSWORD_COMMON:
    'This password is among those that are guessed first. Take another: some words that do not belong together.',
  PERSON_UNKNOWN: 'There is no such person. Load the list of people again.',
  PERSON_NAME_TAKEN: 'This name is taken, and what is done under it must be one person’s. Choose another.',
  PERSON_NAME_MISSING: 'Give a name: it stands beside all that is done.',
  PERSON_LAST_ADMIN: 'This is the last admin who can sign in. Make another one first.',
  PERSON_FOREIGN: 'This person signs in by an identity provider, where role and password are kept. Change them there.',
  TOKEN_UNKNOWN: 'There is no such token in force. Load the list of tokens again.',
  PEOPLE_UNAVAILABLE:
    'The list of people can not be written, so nothing was changed. Check disk space and permissions of the data folder.',
  JOURNAL_UNAVAILABLE:
    'The journal can not be written, and without a record nothing is done. Check disk space and permissions of the data folder.',
} as const satisfies Partial<Record<Code, string>>;

export type PlainCode = keyof typeof said;

export const refused = (code: PlainCode): { readonly ok: false; readonly fault: PeopleFault } =>
  fail({ code, message: said[code] });

/** Not now, but in `waitMs`. */
export function later(waitMs: number): { readonly ok: false; readonly fault: PeopleFault } {
  const retryAfterSeconds = Math.max(1, Math.ceil(waitMs / 1000));
  const message = `No sign-in is taken now. Wait ${retryAfterSeconds} s and try again.`;
  return fail({ code: 'SIGN_IN_LATER', message, retryAfterSeconds });
}
