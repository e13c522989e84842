import type { TightnessEnd } from '@ebbline/shared/contract/tightness-test';
import type { TightnessChange, TightnessRecord } from '../../evaluation/pipeline/tightness-record';
import { changeEntry } from './change-entry';
import type { JournalEntry } from './journal-entry';
import { storedNumber } from './stored-text';

/** Causes of the rows of a pressure-rise test. */
const causes = { started: 'tightnessStarted', ended: 'tightnessEnded' } as const;

/** Tests stand among the alarms under names that no alarm can have: ids of units hold no slash. They stay there after their end: the record is the proof. */
const prefix = 'tightness/';
export const isTightnessName = (name: string): boolean => name.startsWith(prefix);

/** Start or end of a test, with its whole record. */
export const tightnessEntry = (change: TightnessChange, wallMs: number): JournalEntry => ({
  ...changeEntry(
    {
      ...change,
      cause: causes[change.what],
      name: `${prefix}${change.test.id}`,
      unit: change.test.unit,
      sinceMs: change.test.startedMs,
      said: said(change.what, change.test),
      record: change.test,
    },
    wallMs,
  ),
  value: storedNumber(change.test.result?.freeAir ?? null),
  limit: storedNumber(change.test.acceptanceLimitM3PerS),
  unitOfMeasure: 'm3/s',
});

function said(what: TightnessChange['what'], { endedFor, plannedMs, verdict }: TightnessRecord): string {
  if (what === 'started' || endedFor === null) return `tightness test started for ${plannedMs / 60_000} min`;
  return `tightness test ${ends[endedFor]}${verdict === null ? '' : `, ${verdicts[verdict]}`}`;
}

const verdicts = { passes: 'passes', fails: 'fails', notDecided: 'not decided' } as const;

const ends: Readonly<Record<TightnessEnd, string>> = {
  completed: 'completed',
  endedByPerson: 'ended by a person',
  sourceStarted: 'broken off, the vacuum source started',
  flowStarted: 'broken off, water began to flow',
  levelJumped: 'broken off, the level jumped',
  inputBad: 'broken off, an input was lost',
  configuration: 'broken off, the site file no longer has what it measures',
  interrupted: 'interrupted by a restart of the program',
};
