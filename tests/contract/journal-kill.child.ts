import { writeSync } from 'node:fs';
import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { acknowledged, raised, startMs } from './journal-samples';

/** Appends for ever and prints each row after its commit, synchronously, until it is killed. */
const journal = new SqliteAlarmJournal(process.argv[2] ?? '');
for (let n = 1; ; n++) {
  const [[raise, standing], [acknowledge, seen]] = [raised(n), acknowledged(n)];
  const rows = [
    ...journal.append([raise], [standing], startMs + n),
    ...journal.append([acknowledge], [seen], startMs + n),
  ];
  for (const row of rows) writeSync(1, `${JSON.stringify(row)}\n`);
}
