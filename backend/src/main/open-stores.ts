import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { journalFile } from '../connections/alarm-journal/alarm-journal.provider';
import { SqliteAlarmJournal } from '../connections/alarm-journal/sqlite-alarm-journal';
import type { Environment } from '../connections/config/environment';
import { DuckDbHistoryStore } from '../connections/history-store/embedded/duckdb-history-store';
import { WorkerHistoryStore } from '../connections/history-store/worker-history-store';
import type { AlarmJournal } from '../ports/alarm-journal';
import type { HistoryStore } from '../ports/history-store';
import type { ClosingStack } from './closing-stack';

export interface Stores {
  readonly journal: AlarmJournal;
  readonly store: HistoryStore;
}

/** What outlives the program: the journal of alarms, and history. */
export async function openStores(environment: Environment, worker: URL | null, closing: ClosingStack): Promise<Stores> {
  mkdirSync(environment.dataFolder, { recursive: true });
  const journal = new SqliteAlarmJournal(join(environment.dataFolder, journalFile));
  closing.add(() => journal.close());
  const store = await openHistory(join(environment.dataFolder, 'history'), worker);
  closing.add(() => store.close());
  return { journal, store };
}

/** In a thread of its own where its program is built; tests run it on this one. */
function openHistory(folder: string, worker: URL | null): Promise<HistoryStore> {
  return worker === null
    ? DuckDbHistoryStore.open({ folder })
    : WorkerHistoryStore.open({ workerFile: worker, store: { folder } });
}
