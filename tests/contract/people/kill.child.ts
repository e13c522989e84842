import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { SqliteAlarmJournal } from '../../../backend/src/connections/alarm-journal/sqlite-alarm-journal';
import { createPeople } from '../../../backend/src/connections/people/create-people';
import { SystemClock } from '../../../backend/src/connections/system-clock/system-clock';
import type { AuditEntry } from '../../../backend/src/ports/audit';
import { AuditInJournal } from '../../../backend/src/runner/audit-in-journal';

/** Adds people until it kills itself: before the record of the third is written, or right after it. */
const [folder = '', when = ''] = process.argv.slice(2);
const clock = new SystemClock();
const audit = new AuditInJournal(new SqliteAlarmJournal(join(folder, 'journal.sqlite')), clock);
const killing = {
  write(entry: AuditEntry): boolean {
    const isThird = entry.reason.startsWith('added Third');
    if (isThird && when === 'before') process.kill(process.pid, 'SIGKILL');
    const written = audit.write(entry);
    if (isThird && when === 'after') process.kill(process.pid, 'SIGKILL');
    return written;
  },
};
const cost = { memoryKib: 8, passes: 1, lanes: 1 };
const path = join(folder, 'people.db');
const people = createPeople({ path, audit: killing, clock, random: randomBytes, demo: false, cost });
const link = people.firstLink() ?? '';
const begun = await people.setUp({ link, name: 'Ada', password: 'kettle under nine willows' }, '127.0.0.1');
if (!begun.ok) throw new Error(begun.fault.message);
for (const name of ['First', 'Second', 'Third', 'Fourth'])
  await people.addPerson({ name, role: 'operator' }, begun.value.caller, '127.0.0.1');
