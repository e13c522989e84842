import type { CompiledSite, Holder } from '../../evaluation/site/compiled-site';
import type { HistoryBuckets, HistoryStore } from '../../ports/history-store';
import { bucketSeconds } from './bucket-seconds';

export interface PointsQuery {
  readonly site: CompiledSite;
  readonly fromMs: number;
  /** Above `fromMs`. */
  readonly untilMs: number;
}

export interface Read {
  readonly unitOfMeasure: string;
  readonly buckets: HistoryBuckets;
}

const mostBuckets = 480;
const minuteMs = 60_000;
/** The longest shift: of a longer period the seconds of all points of a unit take more room than their buckets save time. */
const mostSecondsMs = 12 * 3_600_000;

/** Null where the holder has no such point. */
export async function readPoint(
  query: PointsQuery,
  store: Pick<HistoryStore, 'read'>,
  holder: Holder | undefined,
  point: string,
): Promise<Read | null> {
  const slot = holder?.slotOf.get(point);
  if (holder === undefined || slot === undefined) return null;
  const unitOfMeasure = query.site.slots.unitOfMeasure[slot] ?? '1';
  const asked = { holder: holder.id, point, unitOfMeasure, ...spanOf(query) };
  return { unitOfMeasure, buckets: await store.read(asked) };
}

/** All points at once where the period is short and its seconds are kept: each read of history costs more than a column more of one. */
export async function readPoints(
  query: PointsQuery,
  store: Pick<HistoryStore, 'read' | 'readSeconds'>,
  holder: Holder,
  points: readonly string[],
): Promise<readonly { readonly point: string; readonly read: Read }[]> {
  const columns = points.flatMap((point) => {
    const slot = holder.slotOf.get(point);
    return slot === undefined ? [] : [{ point, unitOfMeasure: query.site.slots.unitOfMeasure[slot] ?? '1' }];
  });
  const span = spanOf(query);
  if (span.toMs - span.fromMs <= mostSecondsMs) {
    const whole = { fromMs: Math.floor(span.fromMs / 1000) * 1000, toMs: Math.ceil(span.toMs / 1000) * 1000 };
    const seconds = await store.readSeconds({ holder: holder.id, columns, ...whole });
    if (whole.fromMs >= seconds.minutesBeforeMs)
      return columns.map(({ point, unitOfMeasure }, column) => ({
        ...{ point, read: { unitOfMeasure, buckets: bucketSeconds(seconds, column, span) } },
      }));
  }
  const reads: { readonly point: string; readonly read: Read }[] = [];
  for (const { point } of columns) {
    const read = await readPoint(query, store, holder, point);
    if (read !== null) reads.push({ point, read });
  }
  return reads;
}

/** Buckets may begin between two milliseconds; history is asked for whole ones. */
const spanOf = ({ fromMs, untilMs }: PointsQuery) => ({
  fromMs: Math.floor(fromMs),
  toMs: Math.ceil(untilMs),
  buckets: Math.min(mostBuckets, Math.max(1, Math.ceil((untilMs - fromMs) / minuteMs))),
});
