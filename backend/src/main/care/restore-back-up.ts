import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { BackUpManifest } from '@ebbline/shared/contract/back-up-manifest';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { inspectJournal } from '../../connections/alarm-journal/inspect-journal';
import { dropStaged, enforceStaged, stageFiles } from '../../connections/care/restore-folder';
import { keptNames } from '../../connections/history-store/embedded/kept-names';
import { messageOf } from './message-of';
import { stored } from './stores-in-back-up';

/**
 * Puts a back-up into an empty data folder that nobody else uses: copied beside, compared with its manifest, walked and opened
 * first, then moved in, the journal last. Older layouts stay as they are; the next start brings them up.
 * @throws CodedError RESTORE_REFUSED where the back-up is not whole; the data folder is then as it was
 */
export async function restoreBackUp(backUp: string, manifest: BackUpManifest, dataFolder: string): Promise<void> {
  const staged = await stageWhole(backUp, manifest, dataFolder).catch(async (fault: unknown) => {
    await dropStaged(dataFolder);
    throw fault;
  });
  // From here on a fault leaves the staged folder, so that nothing is started on a part of a back-up.
  await enforceStaged(staged, dataFolder, stored.journal);
}

async function stageWhole(backUp: string, manifest: BackUpManifest, dataFolder: string): Promise<string> {
  const { staged, damaged } = await stageFiles(backUp, manifest, dataFolder);
  if (damaged.length > 0)
    throw refused(`${damaged.length} of its files are missing or not as they were written, first ${damaged[0] ?? ''}`);
  checkJournal(join(staged, stored.journal), manifest);
  if (existsSync(join(staged, stored.history))) await checkHistory(join(staged, stored.history));
  return staged;
}

const refused = (why: string): CodedError => new CodedError('RESTORE_REFUSED', `${why}; take another back-up`);

function checkJournal(path: string, { journal }: BackUpManifest): void {
  const inspected = inspectJournal(path);
  if (!inspected.ok) throw refused(`its journal can't be walked (${inspected.fault.message})`);
  const { rows, head, brokenAt } = inspected.value;
  const same =
    rows === journal.rows &&
    head.sequence === journal.sequence &&
    head.hash === journal.hash &&
    brokenAt === journal.brokenAt;
  if (!same) throw refused(`its journal is not the one that was written: sequence ${head.sequence}, hash ${head.hash}`);
}

async function checkHistory(folder: string): Promise<void> {
  await keptNames(folder).catch((fault: unknown) => {
    throw refused(`its history can't be opened (${messageOf(fault)})`);
  });
}
