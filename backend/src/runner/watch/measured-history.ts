import type { HistoryRows } from '../../evaluation/pipeline/history-rows';
import type { Clock } from '../../ports/clock';
import type { HistoryStore } from '../../ports/history-store';
import type { WriteFigures } from './write-figures';

/** The same store, with each commit measured. */
export function measuredHistory(store: HistoryStore, figures: WriteFigures, clock: Clock): HistoryStore {
  const write = async (rows: HistoryRows): Promise<void> => {
    const { count } = rows;
    const beganMs = clock.monotonicMs();
    try {
      await store.write(rows);
      figures.committed(count, clock.monotonicMs() - beganMs);
    } catch (fault) {
      figures.failed(fault);
      throw fault;
    }
  };
  return new Proxy(store, {
    get(target, key) {
      if (key === 'write') return write;
      const member = Reflect.get(target, key) as unknown;
      return typeof member === 'function' ? (member.bind(target) as unknown) : member;
    },
  });
}
