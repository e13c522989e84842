import type { EntryId } from '../../../../backend/src/evaluation/alarm-rules/entry-ids';
import type { Expectation } from '../fault-expectation';

/** What becomes of a fault that is told by no alarm within five minutes, typed by hand; common practice and physics, no source where none is named. */
export interface LongExpectation extends Pick<Expectation, 'fault' | 'on' | 'sizes' | 'ways'> {
  /** So long it is looked at, s, at most: until it is told. */
  readonly lastsS: number;
  /** Entries, as alarm or as alert, that may tell it first: each says what to do about it. None: nothing is told. */
  readonly by: readonly EntryId[];
  /** It has to be told by then, s; left out: it may stay below what its sign is known to, as `because` says. */
  readonly withinS?: number;
  /** Run by every `npm test`, on the first type alone. */
  readonly short?: true;
  readonly because: string;
}
