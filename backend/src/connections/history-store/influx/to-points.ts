import type { IPoint } from 'influx';
import type { HistoryRows } from '../../../evaluation/pipeline/history-rows';
import type { HistoryColumn } from '../../../ports/history-store';

export const secondsPolicy = 'ebbline_seconds';
export const minutesPolicy = 'ebbline_minutes';

/** Field of a point: unit of measure included, so that a changed one is another field. */
export const fieldOf = ({ point, unitOfMeasure }: HistoryColumn): string => `${point} ${unitOfMeasure}`;

export interface LayoutHolder {
  readonly id: string;
  readonly fields: readonly string[];
  /** 1 where a value was ever less than good, from when on its quality is always written. */
  readonly doubted: Uint8Array;
}

/**
 * One point a row with all its fields, nothing and non-numbers left out, so that rows of one second merge field by
 * field. Quality stands in a measurement of its own and only for values that are not good, or once were not: "good"
 * must be said where it takes the place of something else.
 */
export function toPoints(rows: HistoryRows, row: number, holder: LayoutHolder): IPoint[] {
  const offset = rows.offset[row] ?? 0;
  const values: Record<string, number> = {};
  const quality: Record<string, number> = {};
  holder.fields.forEach((field, column) => {
    const value = rows.values[offset + column] ?? NaN;
    const mark = rows.quality[offset + column] ?? 0;
    if (Number.isFinite(value)) values[field] = value;
    if (mark > 1) holder.doubted[column] = 1;
    if (mark > 0 && holder.doubted[column] === 1) quality[field] = mark;
  });
  const at = { tags: { holder: holder.id }, timestamp: rows.secondMs[row] ?? NaN };
  return [
    { measurement: 'second', fields: values, ...at },
    { measurement: 'quality', fields: quality, ...at },
  ].filter((point) => Object.keys(point.fields).length > 0);
}
