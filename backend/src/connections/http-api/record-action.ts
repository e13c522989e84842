import type { Audit, AuditCause } from '../../ports/audit';
import type { Actor } from '../../ports/identity';
import { ProblemError } from './problem-error';

/** Records an action that no alarm, permit or test stands for; without a record it is not done. */
export function record(audit: Pick<Audit, 'write'>, cause: AuditCause, { name, station }: Actor, reason: string): void {
  if (audit.write({ cause, actor: name, station, reason })) return;
  throw new ProblemError(
    'JOURNAL_UNAVAILABLE',
    'The journal can not be written, and without a record nothing is done; /api/health says why.',
  );
}
