import type { HistoryRows } from '../../backend/src/evaluation/pipeline/history-rows';
import type { CompiledSite } from '../../backend/src/evaluation/site/compiled-site';
import type { HistoryStore, HistorySeconds } from '../../backend/src/ports/history-store';

type Reading = Pick<HistoryStore, 'read' | 'readSeconds' | 'readTogether' | 'readMinute'>;

export interface HistoryInMemory extends Reading {
  /** Takes rows of the site's holders, as a pipeline hands them out. */
  write(rows: HistoryRows): void;
  /** One value of one second; the mark is 1 where left out, 3 where the value is null. */
  put(holder: string, point: string, atMs: number, value: number | null, mark?: number): void;
  /** Of before this only minutes are left. */
  minutesBeforeMs: number;
}

/** A history that is kept in memory, second by second; it merges as the stores do. */
export function historyInMemory(site: CompiledSite): HistoryInMemory {
  const cells = new Map<string, Map<number, readonly [value: number, mark: number]>>();
  const columnOf = (holder: string, point: string) => {
    const key = `${holder}\n${point}`;
    const column = cells.get(key) ?? new Map<number, readonly [number, number]>();
    cells.set(key, column);
    return column;
  };
  const put = (holder: string, point: string, atMs: number, value: number, mark: number): void => {
    const column = columnOf(holder, point);
    const before = column.get(atMs);
    const keeps = Number.isNaN(value) && (mark === 0 || (before !== undefined && !Number.isNaN(before[0])));
    if (!keeps) column.set(atMs, [value, mark]);
  };
  const memory: HistoryInMemory = {
    minutesBeforeMs: Number.NEGATIVE_INFINITY,
    put: (holder, point, atMs, value, mark = value === null ? 3 : 1) =>
      put(holder, point, atMs, value ?? Number.NaN, mark),
    write(rows) {
      for (let row = 0; row < rows.count; row += 1) {
        const holder = site.holders[rows.holder[row] ?? -1];
        if (holder === undefined) throw new Error(`no holder ${String(rows.holder[row])}`);
        for (let i = 0; i < holder.slotCount; i += 1) {
          const at = (rows.offset[row] ?? 0) + i;
          const point = site.slots.pointId[holder.firstSlot + i] ?? '';
          put(holder.id, point, rows.secondMs[row] ?? NaN, rows.values[at] ?? NaN, rows.quality[at] ?? 0);
        }
      }
    },
    readSeconds({ columns, fromMs, holder, toMs }): Promise<HistorySeconds> {
      const count = (toMs - fromMs) / 1000;
      const at = (point: string, i: number) => {
        const atMs = fromMs + i * 1000;
        return atMs < memory.minutesBeforeMs ? undefined : columnOf(holder, point).get(atMs);
      };
      const places = Array.from({ length: count }, (_, i) => i);
      return Promise.resolve({
        fromMs,
        count,
        values: columns.map(({ point }) => Float64Array.from(places, (i) => at(point, i)?.[0] ?? Number.NaN)),
        quality: columns.map(({ point }) => Uint8Array.from(places, (i) => at(point, i)?.[1] ?? 0)),
        minutesBeforeMs: memory.minutesBeforeMs,
      });
    },
    readTogether: ({ holders, fromMs, toMs }) =>
      Promise.all(holders.map((holder) => memory.readSeconds({ ...holder, fromMs, toMs }))),
    readMinute: ({ holders, minuteMs }) =>
      Promise.resolve(
        holders.map(({ holder, columns }) => {
          const seen = columns.map(({ point }) =>
            Array.from(
              { length: 60 },
              (_, i) => columnOf(holder, point).get(minuteMs + i * 1000)?.[0] ?? Number.NaN,
            ).filter((value) => !Number.isNaN(value)),
          );
          const over = (figure: (values: readonly number[]) => number): Float64Array =>
            Float64Array.from(seen, (values) => (values.length === 0 ? Number.NaN : figure(values)));
          return {
            min: over((values) => Math.min(...values)),
            mean: over((values) => values.reduce((sum, value) => sum + value, 0) / values.length),
            max: over((values) => Math.max(...values)),
            count: Float64Array.from(seen, ({ length }) => length),
          };
        }),
      ),
    read({ buckets, fromMs, holder, point, toMs }) {
      const bucketMs = Math.ceil((toMs - fromMs) / buckets);
      const sums = new Float64Array(buckets);
      const count = new Float64Array(buckets);
      for (const [atMs, [value]] of columnOf(holder, point)) {
        if (atMs < fromMs || atMs >= toMs || Number.isNaN(value)) continue;
        const bucket = Math.floor((atMs - fromMs) / bucketMs);
        sums[bucket] = (sums[bucket] ?? 0) + value;
        count[bucket] = (count[bucket] ?? 0) + 1;
      }
      const mean = sums.map((sum, i) => sum / (count[i] ?? NaN));
      const startMs = Float64Array.from({ length: buckets }, (_, i) => fromMs + i * bucketMs);
      return Promise.resolve({ bucketMs, resolution: 'minute', startMs, min: mean, mean, max: mean, count });
    },
  };
  return memory;
}
