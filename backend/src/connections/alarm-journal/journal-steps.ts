import type { AlarmState, Priority } from '@ebbline/shared/contract/alarm';
import type { AlarmMode } from '@ebbline/shared/contract/alarm-mode';
import type { JournalStep } from '../../evaluation/alarm-performance/journal-step';
import type { StepsPage, StepsQuery } from '../../ports/alarm-journal';
import type { JournalDatabase } from './journal-database';

/** So many rows are looked at for one page, whatever is found among them: what else the program does waits meanwhile. */
const rowsAPage = 250;

const columns = [
  ...['sequence', 'happened_ms', 'kind', 'cause', 'alarm', 'unit', 'hall', 'entry', 'from_state', 'to_state'],
  ...['priority', 'folded_under', 'since_ms', 'actor', "json_extract(facts, '$.toMode')"],
];

/** The types of the table vouch for the shapes. */
type Stored = readonly [
  sequence: number,
  atMs: number,
  kind: JournalStep['kind'],
  cause: string | null,
  alarm: string | null,
  unit: string | null,
  hall: string | null,
  entry: string | null,
  from: AlarmState | null,
  to: AlarmState | null,
  priority: Priority | null,
  foldedUnder: string | null,
  sinceMs: number | null,
  actor: string | null,
  mode: AlarmMode | null,
];

/** Reads rows of alarms, of changed settings and of floods, without what no figure needs: a year of rows in bounded pieces. */
export function journalSteps(database: JournalDatabase): (query: StepsQuery) => StepsPage {
  const page = database
    .prepare(
      `SELECT ${columns.join(', ')} FROM journal
       WHERE sequence > ?1 AND sequence <= ?1 + ${rowsAPage} AND happened_ms >= ?2 AND happened_ms < ?3
       AND (to_state IS NOT NULL OR cause IN ('settingChanged', 'floodBegan', 'floodEnded'))
       ORDER BY sequence`,
    )
    .raw();
  const bounds = database.prepare('SELECT min(sequence), max(sequence) FROM journal').raw();
  const firstSince = database.prepare('SELECT min(sequence) FROM journal WHERE happened_ms >= ?').raw();

  return ({ after, fromMs, toMs }) => {
    const [first, last] = bounds.get() as [number | null, number | null];
    const since = after > 0 || fromMs === null ? null : (firstSince.get(fromMs) as [number | null])[0];
    const above = Math.max(after, (first ?? 1) - 1, since === null ? 0 : since - 1);
    const [lowest, highest] = [fromMs ?? Number.MIN_SAFE_INTEGER, toMs ?? Number.MAX_SAFE_INTEGER];
    const rows = page.all(above, lowest, highest) as Stored[];
    const next = above + rowsAPage < (last ?? 0) ? above + rowsAPage : null;
    return { steps: rows.map(stepOf), next };
  };
}

function stepOf(stored: Stored): JournalStep {
  const [sequence, atMs, kind, cause, alarm, unit, hall, entry, from, to, priority, foldedUnder, sinceMs, actor, mode] =
    stored;
  const of = { alarm, unit, hall, entry, from, to, priority };
  return { sequence, atMs, kind, cause, ...of, foldedUnder, sinceMs, actor, mode };
}
