import type {
  AddPersonRequest,
  AddTokenRequest,
  ChangePasswordRequest,
  ChangePersonRequest,
  NewToken,
  PersonLink,
  PersonRow,
  Right,
  Role,
  SetUpRequest,
  SignInRequest,
  TokenRow,
} from '@ebbline/shared/contract/people';
import type { Result } from '@ebbline/shared/errors/result';

/** Someone, or some machine, as known from a session or a token. */
export interface Caller {
  /** Stands in the journal beside what was done. */
  readonly name: string;
  readonly role: Role | null;
  readonly rights: readonly Right[];
  readonly by: 'password' | 'openId' | 'demo' | 'token';
  /** Of the session or token; never the secret itself. */
  readonly id: string;
  /** Null with a token: a browser never sends one by itself. */
  readonly csrf: string | null;
  /** Wall time, ms since 1970; null where it does not end that way. */
  readonly endsMs: number;
  readonly idleEndsMs: number | null;
}

/** A session that has just begun; `secret` goes into the cookie and is kept nowhere else. */
export interface BegunSession {
  readonly caller: Caller;
  readonly secret: string;
}

export const peopleFaults = [
  'SIGN_IN_REFUSED',
  'SIGN_IN_LATER',
  'DEMO_SIGN_IN_ABSENT',
  'SET_UP_LINK_UNKNOWN',
  'PASSWORD_COMMON',
  'PERSON_UNKNOWN',
  'PERSON_NAME_TAKEN',
  'PERSON_LAST_ADMIN',
  /** Role and password of someone from an identity provider are kept there. */
  'PERSON_FOREIGN',
  /** The first admin has to give a name. */
  'PERSON_NAME_MISSING',
  'TOKEN_UNKNOWN',
  'PEOPLE_UNAVAILABLE',
  'JOURNAL_UNAVAILABLE',
] as const;
export interface PeopleFault {
  readonly code: (typeof peopleFaults)[number];
  readonly message: string;
  /** With SIGN_IN_LATER. */
  readonly retryAfterSeconds?: number;
}
type Answer<Value> = Promise<Result<Value, PeopleFault>>;

/** What a foreign identity provider says of someone, after its proof was checked. */
export interface ForeignIdentity {
  readonly issuer: string;
  readonly subject: string;
  readonly name: string;
  readonly role: Role;
}

/** Who there is, who is signed in, and which machines may come in. `station` = address from where it was asked. */
export interface People {
  setUpNeeded(): boolean;
  /** The part of the set-up link after #, while no admin exists; made anew at each start, kept only as a hash. */
  firstLink(): string | null;
  setUp(asked: SetUpRequest, station: string): Answer<BegunSession>;
  signIn(asked: SignInRequest, station: string): Answer<BegunSession>;
  /** Only on the demo site and from loopback; the caller has checked neither. */
  signInDemo(name: string, station: string): Answer<BegunSession>;
  signInForeign(who: ForeignIdentity, station: string): Answer<BegunSession>;
  /** By the secret of a cookie. `acts`: pushes the end by idling back. Null: unknown, ended, or the person is disabled. */
  sessionOf(secret: string, acts: boolean): Caller | null;
  /** By the secret of `Authorization: Bearer`. */
  tokenOf(secret: string): Caller | null;
  /** Still in force; for sockets that stay open. */
  isInForce(caller: Caller): boolean;
  endSession(caller: Caller, everywhere: boolean, station: string): Answer<null>;
  changePassword(caller: Caller, asked: ChangePasswordRequest, station: string): Answer<BegunSession>;
  people(): readonly PersonRow[];
  addPerson(asked: AddPersonRequest, caller: Caller, station: string): Answer<PersonLink>;
  changePerson(id: string, asked: ChangePersonRequest, caller: Caller, station: string): Answer<PersonRow>;
  /** A new link to set a password; the old password and all sessions end. */
  linkFor(id: string, reason: string, caller: Caller, station: string): Answer<PersonLink>;
  tokens(): readonly TokenRow[];
  addToken(asked: AddTokenRequest, caller: Caller, station: string): Answer<NewToken>;
  withdrawToken(id: string, reason: string, caller: Caller, station: string): Answer<TokenRow>;
}

export const PEOPLE = Symbol('People');
