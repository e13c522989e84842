import { resolve } from 'node:path';
import { readManifest } from '../../connections/care/back-up-folder';
import { refusedDataFolder } from '../../connections/care/restore-folder';
import type { CareCommand } from './back-up-command';
import { messageOf } from './message-of';
import { restoreBackUp } from './restore-back-up';
import { newerSchema } from './stores-in-back-up';

const usage = 'Usage: npm run restore -- FOLDER   (a back-up to the data folder of EBBLINE_DATA, default ./data)';

/**
 * The command behind `npm run restore`; its caller holds the lock on the data folder. Returns the exit code: 0 restored, 1 restored
 * with a journal whose chain was broken when it was backed up, 2 nothing restored.
 */
export async function restoreCommand({ args, dataFolder, say, complain }: CareCommand): Promise<0 | 1 | 2> {
  const [named, ...more] = args;
  if (named === undefined || more.length > 0 || named.startsWith('-')) {
    complain(usage);
    return 2;
  }
  const backUp = resolve(named);
  const complaint = (why: string): 2 => {
    complain(`Nothing was restored: ${why}.`);
    return 2;
  };
  const inTheWay = await refusedDataFolder(dataFolder);
  if (inTheWay !== null) return complaint(inTheWay);
  const read = await readManifest(backUp);
  if (!read.ok) return complaint(read.fault);
  const newer = newerSchema(read.value.schemas);
  if (newer !== null)
    return complaint(
      `${backUp} was written by a newer program (${newer}); restore it with that one, or a newer one still`,
    );
  try {
    await restoreBackUp(backUp, read.value, dataFolder);
  } catch (fault) {
    return complaint(`${backUp}: ${messageOf(fault)}`);
  }
  const { journal, files, program, writtenAt } = read.value;
  say(`${dataFolder}: ${files.length} files restored, as Ebbline ${program} had them at ${writtenAt}`);
  say(`journal: ${journal.rows} rows, head: sequence ${journal.sequence}, hash ${journal.hash}`);
  say(
    'Everybody signs in again. Whoever was disabled, and each token withdrawn, after the back-up is in force again: look.',
  );
  if (journal.brokenAt === null) return 0;
  complain(
    `The journal was broken at sequence ${journal.brokenAt} already when it was backed up; compare an older one.`,
  );
  return 1;
}
