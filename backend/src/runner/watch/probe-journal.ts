import type { AlarmJournal } from '../../ports/alarm-journal';
import type { Clock } from '../../ports/clock';
import type { WriteFigures } from './write-figures';

/**
 * Where the journal refused what a person did, nothing waits that would be tried again: then this asks it whether it takes
 * writes once more, and so leaves a record of the trouble.
 */
export function probeJournal(journal: AlarmJournal, writes: WriteFigures, waiting: number, clock: Clock): void {
  if (writes.trouble === null || waiting > 0) return;
  const nowMs = clock.wallMs();
  try {
    journal.appendSystem(
      { atMs: nowMs, reason: 'The journal refused writes, and takes them again.', actor: null },
      nowMs,
    );
  } catch {
    // Still refused: health and SYS-2 say so already.
  }
}
