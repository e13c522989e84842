import type { Learnt } from '../evaluation/pipeline/remembered/memory-image';

/** Keeps what the judge has learnt over a restart: one image, the newest. Losing it costs days of learning, and nothing else. */
export interface MemoryStore {
  /** The newest image; null where there is none. Throws where it is there and can't be read. */
  load(): Learnt | null;
  /** Puts a newer one in its place, whole or not at all. */
  save(learnt: Learnt): Promise<void>;
}
