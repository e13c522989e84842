import { guidedSummary } from '../../evaluation/pipeline/guided/guided-summary';
import { guidedTable } from '../../evaluation/pipeline/guided/guided-table';
import type { GuidedChange, GuidedRecord } from '../../evaluation/pipeline/guided/guided-record';
import type { JournalEntry } from './journal-entry';
import { storedText } from './stored-text';
import { nothing } from './to-journal-entry';

/** Causes of the rows of a guided test. */
const causes = {
  started: 'guidedStarted',
  confirmed: 'guidedConfirmed',
  measured: 'guidedMeasured',
  ended: 'guidedEnded',
} as const;

/** Tests stand among the alarms under names that no alarm can have: ids of units hold no slash. They stay there after their end: the record is the proof. */
const prefix = 'guided/';
export const isGuidedName = (name: string): boolean => name.startsWith(prefix);

/** A step of a test, with its whole record. */
export function guidedEntry({ what, test, atMs, actor, station, comment }: GuidedChange, wallMs: number): JournalEntry {
  const said = saidOf(what, test);
  return {
    ...nothing,
    recordedMs: Math.round(wallMs),
    happenedMs: Math.round(atMs),
    kind: actor === null ? 'system' : 'action',
    cause: causes[what],
    alarm: storedText(`${prefix}${test.id}`),
    unit: storedText(test.unit),
    sinceMs: Math.round(test.startedMs),
    actor: storedText(actor),
    station: storedText(station),
    reason: storedText(comment === null || comment === '' ? said : `${said}: ${comment}`),
    record: storedText(JSON.stringify(test)),
  };
}

function saidOf(what: GuidedChange['what'], test: GuidedRecord): string {
  const name = `guided test “${guidedTable[test.kind].title}”`;
  if (what === 'started') return `${name} begun`;
  if (what === 'ended') return `${name} ended. ${guidedSummary(test)}`;
  const done = test.steps[test.at - 1]?.title ?? '';
  return what === 'confirmed' ? `${name}, confirmed: ${done}` : `${name}, measured: ${done}`;
}
