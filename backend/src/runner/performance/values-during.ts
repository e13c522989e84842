import type { Pause } from '../../evaluation/alarm-performance/proposals/off-delay';
import type { HistoryStore } from '../../ports/history-store';
import type { JudgedLine } from './judged-of';

/** So many stretches are read, the newest. */
const reads = 20;

/** Recorded values of a point in stretches of time, second by second; null where history has none or can't be read. */
export async function valuesDuring(
  pauses: readonly Pause[],
  { holder, point, unitOfMeasure }: JudgedLine,
  store: Pick<HistoryStore, 'readSeconds'>,
): Promise<readonly number[] | null> {
  const values: number[] = [];
  for (const { fromMs, toMs } of pauses.slice(-reads)) {
    const from = Math.floor(fromMs / 1000) * 1000;
    const query = { holder, columns: [{ point, unitOfMeasure }], fromMs: from, toMs: Math.ceil(toMs / 1000) * 1000 };
    const read = await store.readSeconds(query).catch(() => null);
    const found = [...(read?.values[0] ?? [])].filter((value) => !Number.isNaN(value));
    // A stretch that nobody recorded may have gone further back than all the others.
    if (found.length === 0) return null;
    values.push(...found);
  }
  return values;
}
