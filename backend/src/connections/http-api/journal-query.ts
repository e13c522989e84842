import type { JournalFilter } from '@ebbline/shared/contract/journal-search';
import type { JournalQuery } from '../../ports/journal-query';
import { ProblemError } from './problem-error';

/** The filter of a request as the journal is asked. Throws the problem where its time is none. */
export function journalQuery(
  { from, to, ...rest }: JournalFilter,
  audit: boolean,
): Omit<JournalQuery, 'order' | 'after' | 'before' | 'limit'> & { readonly after: null } {
  const [fromMs, toMs] = [timeOf(from), timeOf(to)];
  if (fromMs !== null && toMs !== null && !(toMs > fromMs))
    throw new ProblemError('QUERY_MALFORMED', 'to: must be later than from. See /api/openapi.json.');
  return { ...rest, fromMs, toMs, after: null, audit };
}

const timeOf = (iso: string | undefined): number | null => (iso === undefined ? null : Date.parse(iso));
