import { alertName, alertWent, isOfAlert } from './alert-entry';
import type { JournalEntry } from './journal-entry';
import { permitClosed } from './permit-entry';

export interface StandingRow {
  readonly alarm: string;
  readonly sequence: number;
  readonly record: string;
}

export type StandingChange =
  | { readonly kind: 'put'; readonly row: StandingRow }
  | { readonly kind: 'remove'; readonly alarm: string }
  | { readonly kind: 'none' };

/** What a row does to the standing alarms. The journal applies it as it commits; `verify` replays it. */
export function standingChange(
  sequence: number,
  entry: Pick<JournalEntry, 'alarm' | 'cause' | 'record' | 'toState'>,
): StandingChange {
  if (entry.alarm === null) return { kind: 'none' };
  const alarm = isOfAlert(entry.cause) ? alertName(entry.alarm) : entry.alarm;
  if (entry.record !== null) return { kind: 'put', row: { alarm, sequence, record: entry.record } };
  const gone = entry.toState === 'normal' || entry.cause === permitClosed || entry.cause === alertWent;
  return gone ? { kind: 'remove', alarm } : { kind: 'none' };
}

/** The smallest sequence at which kept and replayed standing alarms differ, or null where they agree. */
export function standingDifference(
  kept: readonly StandingRow[],
  replayed: ReadonlyMap<string, StandingRow>,
): number | null {
  const wrong = kept
    .filter(
      (row) => replayed.get(row.alarm)?.sequence !== row.sequence || replayed.get(row.alarm)?.record !== row.record,
    )
    .map((row) => row.sequence);
  const names = new Set(kept.map((row) => row.alarm));
  for (const row of replayed.values()) if (!names.has(row.alarm)) wrong.push(row.sequence);
  return wrong.length === 0 ? null : Math.min(...wrong);
}
