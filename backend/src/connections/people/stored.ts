import type { Right, Role } from '@ebbline/shared/contract/people';

/** What people.db holds. Times are whole ms of wall time since 1970. No secret stands there but as a hash. */
export interface StoredPerson {
  readonly id: string;
  readonly name: string;
  /** What no two have in common. */
  readonly key: string;
  readonly role: Role;
  readonly enabled: boolean;
  /** The identity provider and its name for the person; null for who has a password here. */
  readonly issuer: string | null;
  readonly subject: string | null;
  /** Argon2id in PHC form; null while no password was set, and for who comes from a provider. */
  readonly passwordHash: string | null;
  readonly addedMs: number;
  readonly lastSignInMs: number | null;
}

export interface StoredLink {
  readonly digest: string;
  readonly personId: string;
  readonly endsMs: number;
}

export interface StoredSession {
  readonly digest: string;
  readonly id: string;
  /** Null for a sign-in on the demo site, which knows a name only. */
  readonly personId: string | null;
  readonly name: string;
  readonly begunMs: number;
  readonly actedMs: number;
  readonly station: string;
}

export interface StoredToken {
  readonly digest: string;
  readonly id: string;
  readonly name: string;
  readonly key: string;
  readonly rights: readonly Right[];
  readonly addedBy: string;
  readonly addedMs: number;
  readonly endsMs: number;
  readonly lastUsedMs: number | null;
  readonly withdrawnMs: number | null;
}

/** One change of what is stored; many are committed together. */
export type Change =
  | { readonly put: 'person'; readonly row: StoredPerson }
  | { readonly put: 'link'; readonly row: StoredLink }
  | { readonly put: 'session'; readonly row: StoredSession }
  | { readonly put: 'token'; readonly row: StoredToken }
  | { readonly drop: 'link'; readonly digest: string }
  | { readonly drop: 'session'; readonly digest: string }
  | { readonly drop: 'token'; readonly digest: string };
