/** Why the identity provider's way in did not lead in, by the code in the address (backend `ports/open-id`, `ports/people`). */
const words: Readonly<Record<string, string>> = {
  OPEN_ID_ABSENT: 'No identity provider is set here. Sign in by password.',
  OPEN_ID_UNREACHABLE: 'The identity provider does not answer. Sign in by password, or try again later.',
  OPEN_ID_NOT_BEGUN: 'That sign-in took too long, was used already, or was begun in another browser. Sign in again.',
  OPEN_ID_REFUSED: 'The identity provider refused the sign-in, or what it said of you does not hold. Sign in again.',
  OPEN_ID_NO_ROLE: 'The identity provider knows you, but you have no role here. Ask an admin.',
  PERSON_NAME_TAKEN: 'Somebody else bears your name here. Ask an admin.',
  PERSON_NAME_MISSING: 'The identity provider gives you no name. Ask who runs it.',
  SIGN_IN_REFUSED: 'You may not sign in here any more. Ask an admin.',
  PEOPLE_UNAVAILABLE: 'The server cannot write who signs in. Try again later, and tell the administrator.',
  JOURNAL_UNAVAILABLE: 'The server cannot write its journal, and nobody signs in without a record. Try again later.',
};

/** What to show of `?refused=…`; null where nothing was refused. A code that is not known is not repeated. */
export function refusedElsewhere(code: unknown): string | null {
  if (typeof code !== 'string' || code === '') return null;
  return Object.hasOwn(words, code) ? (words[code] ?? null) : 'The sign-in was refused. Sign in again.';
}
