import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { journalFile } from '../../connections/alarm-journal/alarm-journal.provider';
import { SqliteAlarmJournal } from '../../connections/alarm-journal/sqlite-alarm-journal';
import { linkAtMachine } from '../../connections/people/link-at-machine';
import { peopleFile } from '../../connections/people/people-database';
import { SystemClock } from '../../connections/system-clock/system-clock';
import { AuditInJournal } from '../../runner/audit-in-journal';

const usage =
  'Usage: npm run people:new-link -- NAME   (of a person in the data folder of EBBLINE_DATA, default ./data)';

export interface NewLinkCommand {
  readonly args: readonly string[];
  readonly dataFolder: string;
  readonly say: (text: string) => void;
  readonly complain: (text: string) => void;
}

/**
 * The command behind `npm run people:new-link`, for whoever can't sign in and has nobody who can; its caller holds the lock on the
 * data folder. Returns the exit code: 0 a link was made, 1 refused, 2 nothing to make it of.
 */
export function newLinkCommand({ args, dataFolder, say, complain }: NewLinkCommand): 0 | 1 | 2 {
  const name = args.join(' ').trim();
  if (name === '' || name.startsWith('-')) {
    complain(usage);
    return 2;
  }
  const path = join(dataFolder, peopleFile);
  if (!existsSync(path)) {
    complain(`The data folder ${dataFolder} holds no ${peopleFile}; set EBBLINE_DATA to the one of the program.`);
    return 2;
  }
  try {
    return linkFor(name, path, join(dataFolder, journalFile), say, complain);
  } catch (fault) {
    if (!(fault instanceof CodedError)) throw fault;
    complain(`No link was made: ${fault.message}`);
    return 1;
  }
}

function linkFor(
  name: string,
  path: string,
  journalPath: string,
  say: (text: string) => void,
  complain: (text: string) => void,
): 0 | 1 {
  const clock = new SystemClock();
  const journal = new SqliteAlarmJournal(journalPath);
  try {
    const audit = new AuditInJournal(journal, clock);
    const made = linkAtMachine({ path, audit, clock, random: randomBytes }, name);
    if (!made.ok) {
      complain(`No link was made: ${made.fault.message}`);
      return 1;
    }
    const { person, link, endsAt } = made.value;
    say(`The old password of ${person.name} and all sessions of theirs have ended. The journal tells of it.`);
    say(`Start the program and open this below its address, once, until ${endsAt}:`);
    say(link);
    return 0;
  } finally {
    journal.close();
  }
}
