import { journalFile } from '../../connections/alarm-journal/alarm-journal.provider';
import { journalSchemaVersion } from '../../connections/alarm-journal/journal-schema';
import { energySumsFileName } from '../../connections/energy-sums/energy-sums-file';
import { sumsVersion } from '../../connections/energy-sums/sums-database';
import { historySchemaVersion } from '../../connections/history-store/embedded/copy-history';
import { memoryFileName } from '../../connections/memory-file/memory-file';
import { peopleFile } from '../../connections/people/people-database';
import { peopleSchemaVersion } from '../../connections/people/people-schema';

/** What of a data folder is backed up, by its name in both; the name of the broker's session is not: each program draws its own. */
export const stored = {
  learnt: memoryFileName,
  history: 'history',
  energySums: energySumsFileName,
  people: peopleFile,
  journal: journalFile,
} as const;

/** Newest layout of each store that this program can read; older ones are brought up to it when the program starts. */
export const schemasKnown: Readonly<Record<string, number>> = {
  history: historySchemaVersion,
  energySums: sumsVersion,
  people: peopleSchemaVersion,
  journal: journalSchemaVersion,
};

/** The first store whose layout is newer than this program's, told for a person, or null. */
export function newerSchema(schemas: Readonly<Record<string, number>>): string | null {
  for (const [store, version] of Object.entries(schemas)) {
    const known = schemasKnown[store];
    if (known === undefined) return `it holds ${store}, which this program does not know`;
    if (version > known) return `its ${store} has schema version ${version}, this program knows ${known}`;
  }
  return null;
}
