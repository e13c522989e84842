import type { FactoryProvider } from '@nestjs/common';
import { join } from 'node:path';
import { ALARM_JOURNAL, type AlarmJournal } from '../../ports/alarm-journal';
import { SqliteAlarmJournal } from './sqlite-alarm-journal';

/** Name of the journal's file in the data folder. */
export const journalFile = 'journal.sqlite';

/** Opens the journal in the data folder; whoever stops the application calls `close()` last. */
export function alarmJournalProvider(dataFolder: string): FactoryProvider<AlarmJournal> {
  return { provide: ALARM_JOURNAL, useFactory: () => new SqliteAlarmJournal(join(dataFolder, journalFile)) };
}
