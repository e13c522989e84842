import type { EntryId } from '../../../backend/src/evaluation/alarm-rules/entry-ids';
import type { FaultKind, FaultSize } from '../../../simulator/src/faults/fault';
import type { ShapeFaultKind } from '../../../simulator/src/scenario/shape-faults';

/** Units of the demo site that stand for their type: M and H with supply tank and separator, the bench, alternating tanks, a pump from its reservoir. */
export const types = { M: 'N3', H: 'S1', bench: 'N7', tanks: 'S6', reservoir: 'S7' } as const;
export type TypeId = keyof typeof types;

/** What an operator has to be told of a single fault, typed by hand; common practice and physics, no source where none is named. */
export interface Expectation {
  readonly fault: FaultKind | ShapeFaultKind;
  /** Left out: on every type that can have it. */
  readonly on?: readonly TypeId[];
  /** Left out: every size. */
  readonly sizes?: readonly FaultSize[];
  /** Ways in which it comes (check valve, direction, option); left out: every way. */
  readonly ways?: readonly string[];
  /** Which entries may be told first: each says what to do about this fault. None: nothing is told within the time looked at. */
  readonly first: readonly EntryId[];
  /** So soon after it began, s: the entry's own delay and what the signal needs to travel. */
  readonly withinS?: number;
  readonly where?: string;
  /** What else is told for itself, and why that is another thing to know or to do. */
  readonly beside?: readonly EntryId[];
  /** Of those told, the ones that come a second time. */
  readonly again?: readonly EntryId[];
  /** What the engineer's list shows. */
  readonly alerts?: readonly EntryId[];
  readonly because: string;
}
