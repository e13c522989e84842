import type { HistoryRows } from '../../evaluation/pipeline/history-rows';
import type {
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

/** What the store's worker is asked. */
export type WorkerCall =
  | { readonly call: 'useLayout'; readonly layout: HistoryLayout }
  | { readonly call: 'write'; readonly rows: HistoryRows }
  | { readonly call: 'read'; readonly query: HistoryQuery }
  | { readonly call: 'readSeconds'; readonly query: SecondsQuery }
  | { readonly call: 'readTogether'; readonly query: TogetherQuery }
  | { readonly call: 'readMinute'; readonly query: MinuteQuery }
  | { readonly call: 'maintain'; readonly nowMs: number }
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

/** The answer to request `id`; id 0 says whether the store could be opened. Health comes with every answer. */
export type WorkerReply =
  | { readonly id: number; readonly ok: true; readonly value: WorkerAnswer; readonly health: HistoryHealth }
  | {
      readonly id: number;
      readonly ok: false;
      readonly code: string;
      readonly message: string;
      readonly health: HistoryHealth | null;
    };

export const openingId = 0;
