import type { Result } from '@ebbline/shared/errors/result';
import type { Caller } from './people';

/** Who acts, and from where. Both stand in the journal beside what was done. */
export interface Actor {
  readonly name: string;
  readonly station: string;
  /** Shown by a token: whoever holds it may be anybody, so it is no witness of what a person saw. */
  readonly byToken?: true;
}

/** What a request shows of who sends it. */
export interface Claim {
  /** Who signed in; null: nobody. */
  readonly caller: Caller | null;
  /** The name given in the body, where one was: the one who sends it, or nothing is done. */
  readonly operator: string | undefined;
  /** From where, as the edge says. */
  readonly station: string;
}

export interface ActorFault {
  readonly code: 'SIGN_IN_NEEDED' | 'ACTOR_DIFFERS';
  readonly message: string;
}

/** Decides who acts. */
export interface Identity {
  actorOf(claim: Claim): Result<Actor, ActorFault>;
}

export const IDENTITY = Symbol('Identity');
