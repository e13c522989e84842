import type { AlarmJournal } from '../ports/alarm-journal';
import type { Clock } from '../ports/clock';
import type { RunnerHealth } from '../ports/health-report';
import type { Ticker } from '../ports/ticker';
import { JournalUpkeep } from '../runner/journal-upkeep';
import type { ClosingStack } from './closing-stack';

/** Seals old rows of the journal from now on, unless they are kept for ever; gives back what health says of it. */
export function openJournalUpkeep(
  keepDays: number | null,
  journal: AlarmJournal,
  clock: Clock,
  ticker: Ticker,
  closing: ClosingStack,
): RunnerHealth['reasons'] {
  if (keepDays === null) return () => [];
  const upkeep = new JournalUpkeep(journal, clock, keepDays);
  const following = upkeep.follow(ticker);
  closing.add(() => following.stop());
  return () => upkeep.reasons();
}
