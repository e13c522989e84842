import type { JournalStep } from '../../evaluation/alarm-performance/journal-step';
import type { AlarmJournal, StepsPage } from '../../ports/alarm-journal';

/** Lets everything else run that waits, ticks before all. */
export type Pause = () => Promise<void>;

export const untilOthersRan: Pause = () => new Promise((resolve) => setImmediate(resolve));

/**
 * Hands over every row that happened before a time (null: all), in order, a page at a time with a pause between: a year of rows takes
 * seconds, and the plant is judged meanwhile. From the first row, since what came long ago may stand still.
 */
export async function readSteps(
  journal: Pick<AlarmJournal, 'steps'>,
  toMs: number | null,
  take: (step: JournalStep) => void,
  pause: Pause = untilOthersRan,
): Promise<void> {
  for (let after: number | null = 0; after !== null;) {
    const { steps, next }: StepsPage = journal.steps({ fromMs: null, toMs, after });
    for (const step of steps) take(step);
    after = next;
    await pause();
  }
}
