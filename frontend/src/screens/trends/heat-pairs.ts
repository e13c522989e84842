import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import type { TrendName } from '../../text/trend-link';

/** Heat removed and chip power of one bucket, W. */
export interface HeatPair {
  readonly power: number;
  readonly heat: number;
}

export interface HeatOfUnit {
  readonly unit: string;
  readonly pairs: readonly HeatPair[];
  /** Into how many buckets the period was cut. */
  readonly buckets: number;
  /** End of the newest bucket that has both, s since 1970; null of none. */
  readonly newestSeconds: number | null;
}

/** For each unit of which both are drawn, their means bucket by bucket; buckets where either is missing are left out. */
export function heatPairs(
  points: readonly TrendName[],
  columns: ReadonlyMap<string, HistoryColumns>,
): readonly HeatOfUnit[] {
  const units = [...new Set(points.map(({ unit }) => unit))];
  return units.flatMap((unit) => {
    const chosen = (point: string): boolean => points.some((one) => one.unit === unit && one.point === point);
    const [heat, power] = [columns.get(`${unit}:heatRemoved`), columns.get(`${unit}:chipPower`)];
    if (!chosen('heatRemoved') || !chosen('chipPower') || heat === undefined || power === undefined) return [];
    const byStart = new Map(heat.start.map((start, index) => [start, heat.mean[index] ?? null]));
    const both = power.start.flatMap((start, index) => {
      const [watts, removed] = [power.mean[index] ?? null, byStart.get(start) ?? null];
      return watts === null || removed === null ? [] : [{ start, pair: { power: watts, heat: removed } }];
    });
    const last = both.at(-1);
    const newestSeconds = last === undefined ? null : (Date.parse(last.start) + power.bucketMs) / 1000;
    return [{ unit, pairs: both.map(({ pair }) => pair), buckets: power.start.length, newestSeconds }];
  });
}

/** Heat removed over chip power of all buckets together; null where the chips drew no power. */
export function captureOf(pairs: readonly HeatPair[]): number | null {
  const power = pairs.reduce((sum, pair) => sum + pair.power, 0);
  return power > 0 ? pairs.reduce((sum, pair) => sum + pair.heat, 0) / power : null;
}
