import type { ProgramEntry } from '../../ports/program-entry';
import type { JournalEntry } from './journal-entry';
import { factsText } from './journal-facts';
import { storedText } from './stored-text';
import { nothing } from './to-journal-entry';

/** A start or an orderly end of the program: of no alarm and without a record, so that the standing alarms stay as they are. */
export const programEntry = ({ cause, program, reason }: ProgramEntry, wallMs: number): JournalEntry => ({
  ...nothing,
  recordedMs: Math.round(wallMs),
  happenedMs: Math.round(wallMs),
  kind: 'system',
  cause,
  reason: storedText(reason),
  facts: factsText({ program }),
});
