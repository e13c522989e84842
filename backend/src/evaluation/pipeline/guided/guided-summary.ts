import type { GuidedEnd } from '@ebbline/shared/contract/guided-test';
import type { GuidedRecord } from './guided-record';
import { guidedTable } from './guided-table';

/** What came of a test, in one line. */
export function guidedSummary({ endedFor, endedSaid, kind, result, verdict, state }: GuidedRecord): string {
  if (endedFor === null) return state === 'measure' ? 'It measures.' : 'It waits for a person.';
  if (endedFor !== 'completed') {
    const why = `${broke[endedFor]}${endedSaid === null ? '' : `: ${endedSaid}`}. No verdict.`;
    return `${why} ${guidedTable[kind].afterBreak ?? ''}`.trim();
  }
  const figures = (result?.figures ?? []).filter((one) => one.verdict !== null);
  const count = (wanted: string): number => figures.filter((one) => one.verdict === wanted).length;
  if (verdict === 'passes') return `Passes: each of ${figures.length} within its limits, its whole interval with it.`;
  if (verdict === 'fails')
    return `Fails: ${count('fails')} of ${figures.length} outside the limits, the whole interval with it.`;
  if (figures.length === 0) return 'Not decided: nothing was judged.';
  return `Not decided: of ${count('notDecided')} of ${figures.length} the interval holds a limit.`;
}

export const broke: Readonly<Record<Exclude<GuidedEnd, 'completed'>, string>> = {
  cancelled: 'Cancelled by a person',
  neverSteady: 'Given up',
  gateLost: 'Broken off',
  inputBad: 'Broken off, a reading was lost',
  alarm: 'Broken off by an alarm',
  configuration: 'Broken off, the site file was changed',
  interrupted: 'Interrupted, the program was restarted',
};
