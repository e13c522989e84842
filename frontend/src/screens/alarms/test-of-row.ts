import type { JournalRow } from '@ebbline/shared/contract/alarm';
import type { RouteLocationRaw } from 'vue-router';

/** Tests stand in the journal beside the alarms, under ids of their own. */
const kinds = [
  { prefix: 'tightness/', title: 'pressure-rise test', route: 'tightness-record' },
  { prefix: 'guided/', title: 'guided test', route: 'guided-test' },
] as const;

const kindOf = ({ alarm }: Pick<JournalRow, 'alarm'>) => kinds.find(({ prefix }) => alarm?.startsWith(prefix) === true);

/** What kind of test a row is of; null where it is of none. */
export const testTitle = (row: Pick<JournalRow, 'alarm'>): string | null => kindOf(row)?.title ?? null;

/** Where the record of the test of a row is read; null where it is of none. */
export function testOfRow(row: Pick<JournalRow, 'alarm' | 'unit'>): RouteLocationRaw | null {
  const kind = kindOf(row);
  if (kind === undefined || row.unit === null) return null;
  return { name: kind.route, params: { unit: row.unit, test: (row.alarm ?? '').slice(kind.prefix.length) } };
}
