import { isSetAside, modeOf, setAsideOf } from '../alarm-lifecycle/mode-facts';
import type { AlarmRecord, AlarmTransition } from '../alarm-lifecycle/alarm-record';
import type { PipelineState } from './pipeline-state';
import { atRestart } from './stamp-restored';

/**
 * Takes back what the journal holds. A restored alarm goes on where it was: its delays see it as in alarm, and it
 * clears only when its condition is seen to be gone. An alarm that this site no longer has ends by configuration:
 * nothing judges it any more, and it would stand for ever.
 */
export function restoreAlarms(pipeline: PipelineState, records: readonly AlarmRecord[]): void {
  if (records.length === 0) return;
  const places = pipeline.index.byName();
  const firstOuts = new Set(
    records
      .filter((record) => record.active && !isSetAside(record) && places.has(record.alarm))
      .map(({ alarm }) => alarm),
  );
  for (const record of records) {
    const alarm = places.get(record.alarm);
    if (alarm === undefined || pipeline.applies[alarm] === 0) {
      pipeline.left.push(endedByConfiguration(record, atRestart));
      continue;
    }
    pipeline.book.restore(alarm, pipeline.index.identity(alarm), unfoldedFrom(firstOuts, record));
    if (!record.active) continue;
    pipeline.delays.active[alarm] = 1;
    pipeline.delays.trueSinceMs[alarm] = record.sinceMs;
  }
}

/** What it folded under may be gone with the site file: then it stands by itself. */
const unfoldedFrom = (firstOuts: ReadonlySet<string>, record: AlarmRecord): AlarmRecord =>
  record.foldedUnder === null || firstOuts.has(record.foldedUnder) ? record : { ...record, foldedUnder: null };

/** The end of an alarm that the site file no longer has; where it was set aside, the end of that too. */
export const endedByConfiguration = (record: AlarmRecord, atMs: number): AlarmTransition => ({
  alarm: record.alarm,
  entry: record.entry,
  unit: record.unit,
  hall: record.hall,
  from: record.state,
  to: 'normal',
  cause: 'configuration',
  priority: record.priority,
  atMs,
  sinceMs: record.sinceMs,
  value: record.value,
  limit: record.limit,
  unitOfMeasure: record.unitOfMeasure,
  where: record.where,
  foldedUnder: null,
  actor: null,
  station: null,
  comment: 'configuration: the site file no longer has what this alarm is about',
  ...(isSetAside(record) ? { ...setAsideOf(record), modeFrom: modeOf(record), mode: 'inService' } : {}),
});
