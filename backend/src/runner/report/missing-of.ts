import { isoOf } from './iso-of';
import { localTimes } from './local-times';

export interface KnownOfReport {
  readonly fromMs: number;
  readonly toMs: number;
  readonly untilMs: number;
  readonly timeZone: string;
  /** When the first row of the journal that can be searched happened; null: it has none. */
  readonly firstMs: number | null;
  /** Units of which no figures of each are told; 0: none are left out. */
  readonly leftOut: number;
  /** There were more rows than are told of. */
  readonly more: boolean;
  readonly moreNotes: boolean;
  readonly mayReadAudit: boolean;
  readonly unrecorded: number;
  readonly siteSinceMs: number;
  /** No row that history does not have yet is older; Infinity: it has all. */
  readonly waitingFromMs: number;
  /** Why these are not there; null: they are. */
  readonly energy: string | null;
  readonly performance: string | null;
}

/** What a report does not tell, in sentences: a reader must not take it for calm. */
export function missingOf(known: KnownOfReport): string[] {
  const { firstMs, fromMs, leftOut, siteSinceMs, timeZone, toMs, unrecorded, untilMs, waitingFromMs } = known;
  const at = (ms: number): string => localTimes(isoOf(ms), timeZone);
  const all: readonly (readonly [boolean, string])[] = [
    [untilMs < toMs, `The period goes on until ${at(toMs)}: this is how it stood at ${at(untilMs)}.`],
    [firstMs === null || firstMs >= untilMs, 'The journal has no row that is older than the end of this period.'],
    [
      firstMs !== null && firstMs > fromMs && firstMs < untilMs,
      `The journal can be searched from ${at(firstMs ?? 0)} on: of the time before nothing is told of alarms, changes and notes.`,
    ],
    [known.more, 'There were more rows in the journal than are told of here; the last of them are missing.'],
    [known.moreNotes, 'There were more notes than are shown; the oldest are in the journal.'],
    [
      unrecorded > 0,
      `${unrecorded} changes of alarms wait for the journal, which can not be written; they are not here.`,
    ],
    [
      !known.mayReadAudit,
      'What changed of people and their rights, and who asked for the site file to be read anew, is shown to who may read the audit.',
    ],
    [
      siteSinceMs > fromMs,
      `The site file in force was read at ${at(siteSinceMs)}: units and points are as it has them, not as before.`,
    ],
    [
      waitingFromMs < untilMs,
      `What was measured since ${at(Math.min(waitingFromMs, untilMs))} waits on the disk until the history server takes it: no figure here has it.`,
    ],
    [leftOut > 0, `The figures of each of ${leftOut} units are left out; make the report of one hall for them.`],
    [known.energy !== null, `Heat and energy: ${known.energy ?? ''}`],
    [known.performance !== null, `Alarm performance: ${known.performance ?? ''}`],
  ];
  return all.filter(([is]) => is).map(([, sentence]) => sentence);
}
