/**
 * What was done with people and access, by the cause of a row of the journal (backend `ports/audit`). The reason of the row says
 * who and what it was about; these words go before it, in the place of an alarm.
 */
const words: Readonly<Record<string, string>> = {
  signedIn: 'signed in',
  signInRefused: 'sign-in refused',
  signInLockedOut: 'sign-in refused, locked for a time',
  signedOut: 'signed out',
  sessionEnded: 'session ended',
  firstAdminSet: 'first admin set up',
  passwordSet: 'password set',
  personAdded: 'person added',
  personChanged: 'person changed',
  linkMade: 'link made',
  tokenAdded: 'token made',
  tokenWithdrawn: 'token withdrawn',
  siteReloadAsked: 'site file asked to be read anew',
  demoCommanded: 'demo plant commanded',
  actionRefused: 'not permitted, not done',
  refusalsCounted: 'more refusals, counted',
};

/** The words of a row of people and access; null where the row is of something else. */
export const auditWords = (cause: string | null | undefined): string | null =>
  cause !== null && cause !== undefined && Object.hasOwn(words, cause) ? (words[cause] ?? null) : null;

/** Every cause that has words, for a filter that lists them. */
export const auditCausesInWords: readonly (readonly [cause: string, words: string])[] = Object.entries(words);
