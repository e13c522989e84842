import type { HistoryColumns } from '@ebbline/shared/contract/http-api';
import type { Conversion } from '../text/shown-unit';
import { inUnit } from '../text/shown-unit';

/** Columns as a chart wants them: seconds since 1970, and null wherever nothing was measured. */
export interface ChartColumns {
  readonly seconds: number[];
  readonly min: (number | null)[];
  readonly mean: (number | null)[];
  readonly max: (number | null)[];
}

/** The newest value of the live feed, in the unit of measure of the columns. */
export interface NewestValue {
  readonly time: string;
  readonly value: number | null;
}

/**
 * History columns, each bucket at its middle, values as `of` shows them; then the newest value where it is later.
 * A bucket that counted nothing stays a gap.
 */
export function toColumns(history: HistoryColumns, of: Conversion, newest: NewestValue | null = null): ChartColumns {
  const half = history.bucketMs / 2000;
  const scaled = (column: readonly (number | null)[]): (number | null)[] =>
    column.map((value, index) => (value === null || history.count[index] === 0 ? null : inUnit(value, of)));
  const columns: ChartColumns = {
    seconds: history.start.map((start) => Date.parse(start) / 1000 + half),
    min: scaled(history.min),
    mean: scaled(history.mean),
    max: scaled(history.max),
  };
  return newest === null ? columns : followLive(columns, newest, of, history.bucketMs / 1000);
}

function followLive(columns: ChartColumns, newest: NewestValue, of: Conversion, bucketSeconds: number): ChartColumns {
  const seconds = Date.parse(newest.time) / 1000;
  const last = columns.seconds.at(-1);
  if (newest.value === null || (last !== undefined && seconds <= last)) return columns;
  const value = inUnit(newest.value, of);
  const missed = last !== undefined && seconds - last > 2 * bucketSeconds;
  const bridge = missed ? [null] : [];
  return {
    seconds: [...columns.seconds, ...(missed ? [last + bucketSeconds] : []), seconds],
    min: [...columns.min, ...bridge, value],
    mean: [...columns.mean, ...bridge, value],
    max: [...columns.max, ...bridge, value],
  };
}

/** Places of values with a gap on both sides: a line alone would not show them. */
export function lonelyPlaces(column: readonly (number | null | undefined)[]): number[] {
  const missing = (index: number): boolean => (column[index] ?? null) === null;
  return column.flatMap((_, index) => (!missing(index) && missing(index - 1) && missing(index + 1) ? [index] : []));
}
