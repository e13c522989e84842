import { pointDefinition, type QuantityKind } from '@ebbline/shared/contract/point-table';
import type { HistoryMinute, HistorySeconds } from '../../ports/history-store';
import type { CompiledSite } from '../../evaluation/site/compiled-site';

const minuteMs = 60_000;

/** What is yes or no, or one of some modes, has no mean: only where it was the same all the minute is it known. */
const hasNoMean = (quantity: QuantityKind | undefined): boolean => quantity === 'yesNo' || quantity === 'mode';

/**
 * A minute of which only figures are kept, as the last second of it: the mean of each column. Whether the values were good or uncertain
 * is not kept; bad ones are not in it.
 * @param slots a slot a column
 */
export function minuteAsSecond(
  site: CompiledSite,
  slots: readonly number[],
  { min, mean, max, count }: HistoryMinute,
  startMs: number,
): HistorySeconds {
  const values = slots.map((slot, column) => {
    const isKnown =
      !hasNoMean(pointDefinition(site.slots.pointId[slot] ?? '')?.quantity) || min[column] === max[column];
    return Float64Array.of(isKnown && (count[column] ?? 0) > 0 ? (mean[column] ?? NaN) : NaN);
  });
  return {
    fromMs: startMs + minuteMs - 1000,
    count: 1,
    values,
    quality: values.map(([value = NaN]) => Uint8Array.of(Number.isNaN(value) ? 0 : 1)),
    minutesBeforeMs: Infinity,
  };
}
