import { CodedError } from '@ebbline/shared/errors/coded-error';
import type { Visitor } from '../../ports/entrance';
import type { Actor, Identity } from '../../ports/identity';
import type { Caller } from '../../ports/people';
import { ProblemError } from './problem-error';
import type { WebRequest } from './web-types';

const visitors = new WeakMap<object, Visitor>();

/** Says once who asks; whatever answers the request looks it up here. */
export const noteVisitor = (request: WebRequest, visitor: Visitor): void => void visitors.set(request, visitor);

/** @throws CodedError VISITOR_UNKNOWN where the guard was not passed: a fault of this program */
export function visitorOf(request: WebRequest): Visitor {
  const visitor = visitors.get(request);
  if (visitor === undefined) throw new CodedError('VISITOR_UNKNOWN', 'a request came past the guard');
  return visitor;
}

/** Whoever signed in, or a problem. */
export function callerOf(request: WebRequest): Caller {
  const { caller } = visitorOf(request);
  if (caller === null) throw new ProblemError('SIGN_IN_NEEDED', 'Sign in first: there is no session to speak of.');
  return caller;
}

/** Whoever acts by this request; `operator` as the body has it. */
export function actorOf(identity: Identity, request: WebRequest, operator?: string): Actor {
  const { caller, station } = visitorOf(request);
  const actor = identity.actorOf({ operator, caller, station });
  if (!actor.ok) throw new ProblemError(actor.fault.code, actor.fault.message);
  return actor.value;
}
