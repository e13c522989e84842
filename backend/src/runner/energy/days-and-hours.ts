import { localPeriods } from './local-periods';

const hourMs = 3_600_000;

export interface Day {
  readonly startMs: number;
  readonly endMs: number;
}

/** Local days that cover [fromMs, toMs); null where there are more than `most`. */
export function localDays(fromMs: number, toMs: number, timeZone: string, most: number): readonly Day[] | null {
  const edges = localPeriods(fromMs, toMs, 'day', timeZone, most);
  return edges === null ? null : edges.slice(1).map((endMs, i) => ({ startMs: edges[i] ?? endMs, endMs }));
}

/** Edges of the local hours of a local day. Clocks change in days of another length than 24 hours only. */
export function hourEdges({ startMs, endMs }: Day, timeZone: string): readonly number[] {
  if (endMs - startMs === 24 * hourMs) return Array.from({ length: 25 }, (_, hour) => startMs + hour * hourMs);
  return localPeriods(startMs, endMs, 'hour', timeZone, 200) ?? [startMs, endMs];
}

/** Edges of the local hours that cover [fromMs, toMs), out of the days that do. */
export function coveringHours(days: readonly Day[], fromMs: number, toMs: number, timeZone: string): readonly number[] {
  const edges = [...new Set(days.flatMap((day) => hourEdges(day, timeZone)))];
  const after = edges.findIndex((ms) => ms > fromMs);
  const last = edges.findIndex((ms) => ms >= toMs);
  return edges.slice(Math.max(0, after - 1), last + 1);
}
