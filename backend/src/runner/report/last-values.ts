import type { CompiledSite, Holder } from '../../evaluation/site/compiled-site';
import type { HistoryStore } from '../../ports/history-store';
import type { LastValues } from './line-up';

const lookBackMs = 60_000;

/**
 * The last good value of each of these points within the minute before a time; NaN where there was none, or where only the minute is left
 * and it changed in it.
 */
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
    const { count, max, mean, min } = await store.read({ ...query, ...column, buckets: 1 });
    const [least = Number.NaN, most = Number.NaN] = [min[0], max[0]];
    // Of a mode or a switch that changed within the minute the mean is none of both.
    const isKnown = (count[0] ?? 0) > 0 && !(least !== most && Number.isInteger(least) && Number.isInteger(most));
    found.set(column.point, isKnown ? (mean[0] ?? Number.NaN) : Number.NaN);
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
