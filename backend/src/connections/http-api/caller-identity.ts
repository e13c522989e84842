import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { nameKey } from '../../access/name-key';
import type { Audit } from '../../ports/audit';
import type { Actor, ActorFault, Claim, Identity } from '../../ports/identity';

/** Whoever signed in acts, and nobody under another's name. */
export class CallerIdentity implements Identity {
  constructor(private readonly audit: Pick<Audit, 'write'>) {}

  actorOf({ operator, caller, station }: Claim): Result<Actor, ActorFault> {
    if (caller === null)
      return fail({ code: 'SIGN_IN_NEEDED', message: 'Sign in first: what is done is recorded with who did it.' });
    if (operator === undefined || nameKey(operator) === nameKey(caller.name))
      return ok({ name: caller.name, station, ...(caller.by === 'token' ? { byToken: true } : {}) });
    this.audit.write({
      cause: 'actionRefused',
      actor: caller.name,
      station,
      reason: 'ACTOR_DIFFERS: an action under another name than that of the session or token',
    });
    return fail({
      code: 'ACTOR_DIFFERS',
      message: 'No one acts under another’s name: leave operator out, or sign in under that name.',
    });
  }
}
