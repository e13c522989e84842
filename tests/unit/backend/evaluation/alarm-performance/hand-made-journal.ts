import type { Priority } from '@ebbline/shared/contract/alarm';
import type { JournalStep } from '../../../../../backend/src/evaluation/alarm-performance/journal-step';
import { raise, step } from './steps';

const byAda = { kind: 'action', cause: 'acknowledge', actor: 'Ada' } as const;

/** Told, seen and cleared at these minutes. */
const seenAndCleared = (alarm: string, told: number, seen: number, cleared: number, priority: Priority = 3) => [
  raise(told, alarm, { priority }),
  step(seen, alarm, 'unacknowledged', 'acknowledged', { ...byAda, priority }),
  step(cleared, alarm, 'acknowledged', 'normal', { priority }),
];

const priorityOf = (i: number): Priority => (i === 0 ? 1 : i <= 2 ? 2 : 3);

/** Twelve units each tell once, half a minute apart from minute 60 on; seen 5 min later, cleared 20 min after told. */
const upset = Array.from({ length: 12 }, (_, i) => {
  const told = 60 + i / 2;
  return seenAndCleared(`u${i + 1}:TSUP-1`, told, told + 5, told + 20, priorityOf(i));
}).flat();

/** Three times within 30 s, each time for 6 s; seen at 610. */
const chatter = [
  raise(600, 'u9:FLOW-3'),
  step(600.1, 'u9:FLOW-3', 'unacknowledged', 'returnedUnacknowledged'),
  step(600.25, 'u9:FLOW-3', 'returnedUnacknowledged', 'unacknowledged'),
  step(600.35, 'u9:FLOW-3', 'unacknowledged', 'returnedUnacknowledged'),
  step(600.5, 'u9:FLOW-3', 'returnedUnacknowledged', 'unacknowledged'),
  step(600.6, 'u9:FLOW-3', 'unacknowledged', 'returnedUnacknowledged'),
  step(610, 'u9:FLOW-3', 'returnedUnacknowledged', 'normal', byAda),
];

/** Gone after 30 s, seen after 60 s. */
const fleeting = [
  raise(700, 'u8:DEW-1'),
  step(700.5, 'u8:DEW-1', 'unacknowledged', 'returnedUnacknowledged'),
  step(701, 'u8:DEW-1', 'returnedUnacknowledged', 'normal', byAda),
];

/** A consequence that came with the first alarm of the upset, and went with it. */
const consequence = [
  raise(60, 'u1:FLOW-1', { foldedUnder: 'u1:TSUP-1' }),
  step(80, 'u1:FLOW-1', 'unacknowledged', 'returnedUnacknowledged', { foldedUnder: 'u1:TSUP-1' }),
];

/** Stands for 25 h, acknowledged after 0.6 s; and one that stands at the end, seen after 10 min. */
const long = [
  ...seenAndCleared('u7:AIR-2', 100, 100.01, 1600),
  raise(2000, 'u6:AIR-2'),
  step(2010, 'u6:AIR-2', 'unacknowledged', 'acknowledged', byAda),
];

/** Two days of one position, in order of time: 18 annunciations. */
export const handMadeJournal: readonly JournalStep[] = [
  ...upset,
  ...chatter,
  ...fleeting,
  ...consequence,
  ...long,
].sort((a, b) => a.atMs - b.atMs);
