import type { HistoryRows } from '../../evaluation/pipeline/history-rows';
import type { EmbeddedHistoryOptions } from './embedded/duckdb-history-store';
import type { InfluxHistoryOptions } from './influx/influx-history-store';
import type {
  HistoryAge,
  HistoryBuckets,
  HistoryHealth,
  HistoryLayout,
  HistoryMinute,
  HistoryQuery,
  HistorySeconds,
  MinuteQuery,
  SecondsQuery,
  TogetherQuery,
} from '../../ports/history-store';

/** The store that a worker is to open. */
export type WorkerStore =
  | { readonly kind: 'embedded'; readonly options: EmbeddedHistoryOptions }
  | { readonly kind: 'influx'; readonly options: InfluxHistoryOptions };

/** What the store's worker is asked. */
export type WorkerCall =
  | { readonly call: 'useLayout'; readonly layout: HistoryLayout }
  | { readonly call: 'write'; readonly rows: HistoryRows }
  | { readonly call: 'read'; readonly query: HistoryQuery }
  | { readonly call: 'readSeconds'; readonly query: SecondsQuery }
  | { readonly call: 'readTogether'; readonly query: TogetherQuery }
  | { readonly call: 'readMinute'; readonly query: MinuteQuery }
  | { readonly call: 'maintain'; readonly nowMs: number; readonly age: HistoryAge | undefined }
  | { readonly call: 'close' };

export interface WorkerRequest {
  readonly id: number;
  readonly body: WorkerCall;
}

export type WorkerAnswer =
  | HistoryBuckets
  | HistorySeconds
  | { readonly together: readonly HistorySeconds[] }
  | { readonly minutes: readonly HistoryMinute[] }
  | null;

/** How the store is, with every answer and wherever it changed in between. */
export interface WorkerState {
  readonly health: HistoryHealth;
  /** As `HistoryStore.waitingFromMs`. */
  readonly waitingFromMs: number;
}

/** The answer to request `id`; id 0 says whether the store could be opened, −1 only how it is. */
export type WorkerReply =
  | { readonly id: number; readonly ok: true; readonly value: WorkerAnswer; readonly state: WorkerState }
  | {
      readonly id: number;
      readonly ok: false;
      readonly code: string;
      readonly message: string;
      readonly state: WorkerState | null;
    };

export const openingId = 0;
export const stateId = -1;
