import type { HistoryStore } from '../../ports/history-store';
import { DuckDbHistoryStore } from './embedded/duckdb-history-store';
import { InfluxHistoryStore } from './influx/influx-history-store';
import { WorkerHistoryStore } from './worker-history-store';

export interface HistoryPlace {
  /** InfluxDB's address; null for the embedded store. */
  readonly influxUrl: string | null;
  /** The built `history-worker.ts`; null to run the embedded store in this thread. */
  readonly workerFile: URL | null;
  /** Folder of the embedded store. */
  readonly folder: string;
}

/** The store that the environment asks for. @throws CodedError HISTORY_OPEN_FAILED, HISTORY_URL_INVALID */
export function openHistoryStore({ influxUrl, workerFile, folder }: HistoryPlace): Promise<HistoryStore> {
  if (influxUrl !== null) return InfluxHistoryStore.open({ url: influxUrl });
  if (workerFile !== null) return WorkerHistoryStore.open({ workerFile, store: { folder } });
  return DuckDbHistoryStore.open({ folder });
}
