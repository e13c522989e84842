import type { HistoryStore } from '../../backend/src/ports/history-store';

/** A store on data of its own; `reopen` ends it as a restart of the program does and opens it on the same data. */
export interface StoreUnderTest {
  store: HistoryStore;
  reopen(): Promise<void>;
  remove(): Promise<void>;
}
