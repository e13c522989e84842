import type { JournalDatabase } from './journal-database';
import type { JournalEntry } from './journal-entry';
import { standingChange, type StandingChange } from './standing-alarms';

type Deciding = Pick<JournalEntry, 'alarm' | 'cause' | 'record' | 'toState'>;

/**
 * Rows to be kept whole as others are sealed, so that what stood when the sealed rows end can still be told once it has changed: of
 * each name the last row, where it stands by it, or where it stood by a row that was kept before.
 * @param stood names that stood by the rows kept so far
 */
export function rowsThatStood(
  rows: readonly (Deciding & { readonly sequence: number })[],
  stood: ReadonlySet<string>,
): readonly number[] {
  const last = new Map<string, { readonly sequence: number; readonly stands: boolean }>();
  for (const row of rows) {
    const change = standingChange(row.sequence, row);
    const name = nameOf(change);
    if (name !== null) last.set(name, { sequence: row.sequence, stands: change.kind === 'put' });
  }
  return [...last].filter(([name, { stands }]) => stands || stood.has(name)).map(([, { sequence }]) => sequence);
}

/** What stood when the sealed rows end: records by name. */
export function stoodWhenSealed(database: JournalDatabase): () => Map<string, string> {
  const kept = database
    .prepare('SELECT sequence, alarm, cause, to_state, record FROM kept WHERE alarm IS NOT NULL ORDER BY sequence')
    .raw();
  return () => {
    const records = new Map<string, string>();
    for (const [sequence, alarm, cause, toState, record] of kept.all() as KeptRow[]) {
      const change = standingChange(sequence, { alarm, cause, toState, record });
      if (change.kind === 'put') records.set(change.row.alarm, change.row.record);
      if (change.kind === 'remove') records.delete(change.alarm);
    }
    return records;
  };
}

type KeptRow = [number, string, string | null, JournalEntry['toState'], string | null];

const nameOf = (change: StandingChange): string | null =>
  change.kind === 'none' ? null : change.kind === 'put' ? change.row.alarm : change.alarm;
