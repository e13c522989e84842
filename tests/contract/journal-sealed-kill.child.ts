import { SqliteAlarmJournal } from '../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { armFailpoint } from '../../backend/src/ports/failpoint';

/** Seals what is old of the journal that it is given, and is killed at the place that the environment names. */
armFailpoint(process.env['EBBLINE_TEST_FAILPOINT'], () => process.kill(process.pid, 'SIGKILL'));
const [, , file = '', beforeMs = '0'] = process.argv;
const journal = new SqliteAlarmJournal(file);
await journal.sealOldest({ beforeMs: Number(beforeMs), urgentMs: Number(beforeMs), wallMs: Number(beforeMs) });
journal.close();
