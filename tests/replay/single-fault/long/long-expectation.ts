import type { EntryId } from '../../../../backend/src/evaluation/alarm-rules/entry-ids';
import type { Expectation } from '../fault-expectation';

interface SlowFault extends Pick<Expectation, 'fault' | 'on' | 'sizes' | 'ways'> {
  /** Run by every `npm test`, on the first type alone. */
  readonly short?: true;
  readonly because: string;
}

/** It has to be told, by then. */
export interface ToldLate extends SlowFault {
  /** Entries, as alarm or as alert, that tell it first: each says what to do about it. */
  readonly by: readonly [EntryId, ...EntryId[]];
  /** At the latest, s after it began. */
  readonly withinS: number;
  /** Alerts that stand in the engineer’s list before it. */
  readonly before?: readonly EntryId[];
  /** What is told for itself within ten minutes of the first, and why that is another thing to know or to do. */
  readonly beside?: readonly EntryId[];
  /** So long the unit runs well before, s, where what is usual has to be known better than the short form asks for. */
  readonly wellForS?: number;
}

/** Nothing is told, and that is right: `because` says why. */
export interface Silent extends SlowFault {
  readonly by: readonly [];
  /** So long it is looked at, s. */
  readonly silentForS: number;
}

/** What becomes of a fault that no alarm tells within five minutes, typed by hand; common practice and physics, no source where none is named. */
export type LongExpectation = ToldLate | Silent;

export const isSilent = (row: LongExpectation): row is Silent => 'silentForS' in row;
