import type { peopleRoutes } from '@ebbline/shared/contract/people-routes';

type Row = (typeof peopleRoutes)[number];
type Key = Row extends infer R ? (R extends Row ? `${R['method']} ${R['path']}` : never) : never;

/** The same for who may come in. */
export const peopleRouteTexts: Readonly<Record<Key, { readonly operationId: string; readonly summary: string }>> = {
  'get /api/session': { operationId: 'session', summary: 'Who is signed in, what they may do, and how to sign in.' },
  'post /api/session/sign-in': { operationId: 'signIn', summary: 'Signs in by name and password; sets the cookie.' },
  'post /api/session/demo': {
    operationId: 'signInDemo',
    summary: 'Signs in under a name alone: on the demo site, at this machine.',
  },
  'post /api/session/set-up': {
    operationId: 'setUp',
    summary: 'Sets a password by a link: of the first start, or one that an admin handed over.',
  },
  'post /api/session/password': {
    operationId: 'changePassword',
    summary: 'Sets another password; all other sessions of this person end.',
  },
  'post /api/session/end': { operationId: 'signOut', summary: 'Ends this session, or all of this person.' },
  'get /api/people': { operationId: 'people', summary: 'Everyone who may sign in.' },
  'post /api/people': {
    operationId: 'addPerson',
    summary: 'Adds a person; the answer holds the link for their password, once.',
  },
  'post /api/people/{id}/change': { operationId: 'changePerson', summary: 'Gives another role, disables or enables.' },
  'post /api/people/{id}/link': {
    operationId: 'linkForPerson',
    summary: 'A new link to set a password; the old password and all sessions end.',
  },
  'get /api/tokens': { operationId: 'tokens', summary: 'Every token of a machine, never its secret.' },
  'post /api/tokens': { operationId: 'addToken', summary: 'A token for a machine; the answer holds its secret, once.' },
  'post /api/tokens/{id}/withdraw': { operationId: 'withdrawToken', summary: 'Withdraws a token at once.' },
};
