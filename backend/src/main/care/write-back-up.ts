import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { BackUpManifest } from '@ebbline/shared/contract/back-up-manifest';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { version } from '../../../package.json';
import { copyArchives } from '../../connections/alarm-journal/copy-archives';
import { copyJournal } from '../../connections/alarm-journal/copy-journal';
import { inspectJournal, type InspectedJournal } from '../../connections/alarm-journal/inspect-journal';
import { beginFolder, dropFolder, finishFolder } from '../../connections/care/back-up-folder';
import { copyPrivately } from '../../connections/care/private-files';
import { copySums } from '../../connections/energy-sums/copy-sums';
import { copyHistory } from '../../connections/history-store/embedded/copy-history';
import { copyPeople } from '../../connections/people/copy-people';
import { schemasKnown, stored } from './stores-in-back-up';

export interface BackUp {
  readonly manifest: BackUpManifest;
  /** What a person must know of it. */
  readonly notes: readonly string[];
}

/**
 * Copies a data folder, of a running program too. The journal comes last, so that nothing that the other files tell of is missing
 * in it; sums of energy come after history, so that no sum is made of less than the history beside it.
 * @throws CodedError BACK_UP_FAILED, HISTORY_COPY_FAILED; the target is then as it was
 */
export async function writeBackUp(dataFolder: string, target: string, nowMs: number): Promise<BackUp> {
  const from = (name: string): string => join(dataFolder, name);
  const writing = await beginFolder(target);
  try {
    const to = (name: string): string => join(writing, name);
    const notes: string[] = [];
    const schemas: Record<string, number> = {};
    const holds = (store: string): void => {
      const known = schemasKnown[store];
      if (known !== undefined) schemas[store] = known;
    };

    if (existsSync(from(stored.learnt))) await copyPrivately(from(stored.learnt), to(stored.learnt));
    const history = await copyHistory({ from: from(stored.history), to: to(stored.history) });
    if (history.found) holds('history');
    if (history.missing.length > 0)
      notes.push(
        `history names ${history.missing.length} sealed files that are not there, first ${history.missing[0] ?? ''}: their hours are missing in the back-up as well`,
      );
    const sums = copySums(from(stored.energySums), to(stored.energySums));
    if (sums === 'copied') holds('energySums');
    if (sums === 'damaged')
      notes.push(
        `${stored.energySums} is damaged and left out of the back-up: sums of energy are made anew from history, which takes longer at first`,
      );
    const people = copyPeople(from(stored.people), to(stored.people));
    if (people !== null) schemas['people'] = people;
    copyJournal(from(stored.journal), to(stored.journal));
    const lacking = await copyArchives(to(stored.journal), dataFolder, writing, copyPrivately);
    if (lacking.length > 0)
      notes.push(
        `the journal names ${lacking.length} sealed files that are not there, first ${lacking[0] ?? ''}: their rows are missing in the back-up as well`,
      );
    const journal = journalIn(to(stored.journal));
    schemas['journal'] = journal.schemaVersion;

    const { rows, head, brokenAt } = journal;
    const about = { rows, sequence: head.sequence, hash: head.hash, brokenAt };
    const writtenAt = new Date(nowMs).toISOString();
    const manifest = await finishFolder(writing, target, { program: version, writtenAt, schemas, journal: about });
    return { manifest, notes };
  } catch (fault) {
    await dropFolder(writing);
    throw fault;
  }
}

function journalIn(copied: string): InspectedJournal {
  const inspected = inspectJournal(copied);
  if (inspected.ok) return inspected.value;
  throw new CodedError('BACK_UP_FAILED', `the copy ${copied} is no whole journal: ${inspected.fault.message}`);
}
