import type { AlarmState, Priority } from '@ebbline/shared/contract/alarm';

/** What one row of the journal holds besides its place in the chain. Times are whole ms since the epoch, UTC. */
export interface JournalEntry {
  /** When it was recorded. */
  readonly recordedMs: number;
  /** When it happened by the clock in force. */
  readonly happenedMs: number;
  readonly kind: 'transition' | 'action' | 'system';
  readonly cause: string | null;
  readonly alarm: string | null;
  readonly unit: string | null;
  readonly hall: string | null;
  readonly entry: string | null;
  readonly fromState: AlarmState | null;
  readonly toState: AlarmState | null;
  readonly priority: Priority | null;
  readonly value: number | null;
  readonly limit: number | null;
  readonly unitOfMeasure: string | null;
  readonly place: string | null;
  readonly foldedUnder: string | null;
  readonly sinceMs: number | null;
  readonly actor: string | null;
  readonly station: string | null;
  readonly reason: string | null;
  /** The alarm as it stood after this row, as JSON; null where nothing stands or the row is of no alarm. */
  readonly record: string | null;
  /** What else is on record (`shared/contract/journal-facts`), as JSON; null where the row says no more, as all rows of before schema 3. */
  readonly facts: string | null;
}

export interface ChainedEntry extends JournalEntry {
  readonly sequence: number;
  readonly previousHash: string;
  readonly hash: string;
}

/** Column beside field, in the order that the canonical form and the table share; `facts` follows them where a row has some. */
export const entryColumns = [
  ['recorded_ms', 'recordedMs'],
  ['happened_ms', 'happenedMs'],
  ['kind', 'kind'],
  ['cause', 'cause'],
  ['alarm', 'alarm'],
  ['unit', 'unit'],
  ['hall', 'hall'],
  ['entry', 'entry'],
  ['from_state', 'fromState'],
  ['to_state', 'toState'],
  ['priority', 'priority'],
  ['value', 'value'],
  ['limit_value', 'limit'],
  ['unit_of_measure', 'unitOfMeasure'],
  ['place', 'place'],
  ['folded_under', 'foldedUnder'],
  ['since_ms', 'sinceMs'],
  ['actor', 'actor'],
  ['station', 'station'],
  ['reason', 'reason'],
  ['record', 'record'],
] as const satisfies readonly (readonly [string, keyof JournalEntry])[];

/** Every column of a row, in the order of `StoredValues`. */
export const rowColumns = ['sequence', ...entryColumns.map(([column]) => column), 'facts', 'previous_hash', 'hash'];

/** An entry as the database gives it back. */
export type StoredValues = readonly (string | number | null)[];

/** The reverse of `storedValues`; the triggers and STRICT types of the table vouch for the shapes. */
export function chainedEntry(stored: StoredValues): ChainedEntry {
  const fields = entryColumns.map(([, field], index) => [field, stored[index + 1]] as const);
  return {
    ...Object.fromEntries(fields),
    sequence: stored[0],
    facts: stored[entryColumns.length + 1],
    previousHash: stored[entryColumns.length + 2],
    hash: stored[entryColumns.length + 3],
  } as unknown as ChainedEntry;
}

export function storedValues(entry: ChainedEntry): (string | number | null)[] {
  const { sequence, facts, previousHash, hash } = entry;
  return [sequence, ...entryColumns.map(([, field]) => entry[field]), facts, previousHash, hash];
}
