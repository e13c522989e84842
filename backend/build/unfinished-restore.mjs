/** A data folder into which a restore did not end holds a part of a back-up: nothing may begin a new journal beside it. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';

/** Named by backend/src/connections/care/restore-folder.ts as well, which makes and removes it. */
const unfinishedName = 'restore-unfinished';

/** What to tell, or null. */
export function unfinishedRestore(folder) {
  return existsSync(join(folder, unfinishedName))
    ? `A restore into ${folder} did not end. Remove all but build from it, and run npm run restore again.`
    : null;
}
