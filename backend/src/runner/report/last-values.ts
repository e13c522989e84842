import type { CompiledSite, Holder } from '../../evaluation/site/compiled-site';
import type { HistoryStore } from '../../ports/history-store';
import type { LastValues } from './line-up';

const lookBackMs = 60_000;

/** The last good value of each of these points within the minute before a time; NaN where there was none. */
export async function lastValues(
  store: Pick<HistoryStore, 'read' | 'readSeconds'>,
  site: CompiledSite,
  holder: Holder,
  points: readonly string[],
  untilMs: number,
): Promise<LastValues> {
  const columns = points.flatMap((point) => {
    const slot = holder.slotOf.get(point);
    return slot === undefined ? [] : [{ point, unitOfMeasure: site.slots.unitOfMeasure[slot] ?? '1' }];
  });
  const toMs = Math.ceil(untilMs / 1000) * 1000;
  const query = { holder: holder.id, fromMs: toMs - lookBackMs, toMs };
  const { minutesBeforeMs, values } = await store.readSeconds({ ...query, columns });
  const found = new Map(columns.map(({ point }, at) => [point, lastOf(values[at])]));
  if (toMs > minutesBeforeMs) return found;
  for (const column of columns) {
    const { count, mean } = await store.read({ ...query, ...column, buckets: 1 });
    found.set(column.point, (count[0] ?? 0) > 0 ? (mean[0] ?? Number.NaN) : Number.NaN);
  }
  return found;
}

function lastOf(values: Float64Array | undefined): number {
  for (let at = (values?.length ?? 0) - 1; at >= 0; at--) {
    const value = values?.[at] ?? Number.NaN;
    if (!Number.isNaN(value)) return value;
  }
  return Number.NaN;
}
