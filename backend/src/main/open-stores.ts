import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { CodedError } from '@ebbline/shared/errors/coded-error';
import { journalFile } from '../connections/alarm-journal/alarm-journal.provider';
import { SqliteAlarmJournal } from '../connections/alarm-journal/sqlite-alarm-journal';
import type { Environment } from '../connections/config/environment';
import { EnergySumsFile, energySumsFileName } from '../connections/energy-sums/energy-sums-file';
import { MemoryFile, memoryFileName } from '../connections/memory-file/memory-file';
import { DuckDbHistoryStore } from '../connections/history-store/embedded/duckdb-history-store';
import { InfluxHistoryStore } from '../connections/history-store/influx/influx-history-store';
import { WorkerHistoryStore } from '../connections/history-store/worker-history-store';
import { SystemClock } from '../connections/system-clock/system-clock';
import type { AlarmJournal } from '../ports/alarm-journal';
import type { HistoryStore } from '../ports/history-store';
import type { KeptEnergy } from '../ports/kept-energy';
import type { MemoryStore } from '../ports/memory-store';
import type { ClosingStack } from './closing-stack';
import { historyQueueFolder } from './history-queue-folder';
import { StartFault } from './start-fault';

export interface Stores {
  readonly journal: AlarmJournal;
  readonly store: HistoryStore;
  readonly memory: MemoryStore;
  readonly keptEnergy: KeptEnergy;
}

/** What outlives the program: the journal of alarms, history, and what the judge has learnt. */
export async function openStores(environment: Environment, worker: URL | null, closing: ClosingStack): Promise<Stores> {
  try {
    mkdirSync(environment.dataFolder, { recursive: true });
    const journal = new SqliteAlarmJournal(join(environment.dataFolder, journalFile));
    closing.add(() => journal.close());
    const store = await openHistory(environment, worker);
    closing.add(() => store.close());
    const keptEnergy = new EnergySumsFile(join(environment.dataFolder, energySumsFileName), historyName(environment));
    closing.add(() => keptEnergy.close());
    return { journal, store, memory: new MemoryFile(join(environment.dataFolder, memoryFileName)), keptEnergy };
  } catch (error) {
    if (error instanceof CodedError && /^(JOURNAL|HISTORY)_/.test(error.code)) throw new StartFault([error.message]);
    throw error;
  }
}

/** Which history sums are made from; without the password that an address may hold. */
function historyName({ influxUrl }: Environment): string {
  if (influxUrl === null) return 'embedded';
  const { host, pathname } = new URL(influxUrl);
  return `${host}${pathname}`;
}

/** The server of the environment, else embedded: in a thread of its own where its program is built; tests run it on this one. */
function openHistory({ influxUrl, dataFolder }: Environment, workerFile: URL | null): Promise<HistoryStore> {
  if (influxUrl !== null) {
    const options = {
      url: influxUrl,
      queueFolder: join(dataFolder, historyQueueFolder),
      nowMs: new SystemClock().wallMs(),
    };
    if (workerFile === null) return InfluxHistoryStore.open(options);
    return WorkerHistoryStore.open({ workerFile, store: { kind: 'influx', options } });
  }
  const options = { folder: join(dataFolder, 'history') };
  if (workerFile === null) return DuckDbHistoryStore.open(options);
  return WorkerHistoryStore.open({ workerFile, store: { kind: 'embedded', options } });
}
