import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import type { TrendName } from '../../text/trend-link';

/** Heat removed and chip power of one bucket, W. */
export interface HeatPair {
  readonly power: number;
  readonly heat: number;
}

/** For each unit of which both are drawn, their means bucket by bucket; buckets where either is missing are left out. */
export function heatPairs(
  points: readonly TrendName[],
  columns: ReadonlyMap<string, HistoryColumns>,
): readonly { readonly unit: string; readonly pairs: readonly HeatPair[] }[] {
  const units = [...new Set(points.map(({ unit }) => unit))];
  return units.flatMap((unit) => {
    const chosen = (point: string): boolean => points.some((one) => one.unit === unit && one.point === point);
    const [heat, power] = [columns.get(`${unit}:heatRemoved`), columns.get(`${unit}:chipPower`)];
    if (!chosen('heatRemoved') || !chosen('chipPower') || heat === undefined || power === undefined) return [];
    const byStart = new Map(heat.start.map((start, index) => [start, heat.mean[index] ?? null]));
    const pairs = power.start.flatMap((start, index) => {
      const [watts, removed] = [power.mean[index] ?? null, byStart.get(start) ?? null];
      return watts === null || removed === null ? [] : [{ power: watts, heat: removed }];
    });
    return [{ unit, pairs }];
  });
}
