import type { Result } from '@ebbline/shared/errors/result';

/** Who acts, and from where. Both stand in the journal beside what was done. */
export interface Actor {
  readonly name: string;
  readonly station: string;
}

/** What a request shows of who sends it. */
export interface Claim {
  /** The name given in the body; empty where none was. */
  readonly operator: string;
  /** Address of the other end of the connection. */
  readonly remoteAddress: string;
}

/** Decides who acts. Today: the name in the body, on loopback only; with sign-in, the session. */
export interface Identity {
  actorOf(
    claim: Claim,
  ): Result<Actor, { readonly code: 'ACTOR_UNNAMED' | 'ACTOR_NOT_LOCAL'; readonly message: string }>;
}

export const IDENTITY = Symbol('Identity');
