import { guidedSummary } from '../../evaluation/pipeline/guided/guided-summary';
import { guidedTable } from '../../evaluation/pipeline/guided/guided-table';
import type { GuidedChange, GuidedRecord } from '../../evaluation/pipeline/guided/guided-record';
import { changeEntry } from './change-entry';
import type { JournalEntry } from './journal-entry';

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
export const guidedEntry = (change: GuidedChange, wallMs: number): JournalEntry =>
  changeEntry(
    {
      ...change,
      cause: causes[change.what],
      name: `${prefix}${change.test.id}`,
      unit: change.test.unit,
      sinceMs: change.test.startedMs,
      said: saidOf(change.what, change.test),
      record: change.test,
    },
    wallMs,
  );

function saidOf(what: GuidedChange['what'], test: GuidedRecord): string {
  const name = `guided test “${guidedTable[test.kind].title}”`;
  if (what === 'started') return `${name} begun`;
  if (what === 'ended') return `${name} ended. ${guidedSummary(test)}`;
  const done = test.steps[test.at - 1]?.title ?? '';
  return what === 'confirmed' ? `${name}, confirmed: ${done}` : `${name}, measured: ${done}`;
}
