import type { ChartScale } from './chart-scale';

/** A value, a gap (null), or nothing here because another line has a time of its own (undefined). */
export type Cell = number | null | undefined;

export type LineMark = 'circle' | 'diamond';

/** One line of a lane on its own times, in the lane's unit of measure. */
export interface LaneLine {
  readonly key: string;
  /** A letter at the line's end and in the key beside the picture: colour alone tells nothing. */
  readonly letter: string;
  /** Which of the inks and dashes it is drawn with, from 0. */
  readonly ink: number;
  readonly seconds: readonly number[];
  readonly min: readonly Cell[];
  readonly mean: readonly Cell[];
  readonly max: readonly Cell[];
  /** Expanded uncertainty of a single value at each time, k = 2, null where it is not known; null where it is not to be drawn. */
  readonly uncertainty: readonly Cell[] | null;
  /** A line held beside the others, of an earlier period (circle) or another unit (diamond), is thin and bears marks. */
  readonly mark?: LineMark;
}

/** A limit drawn across a lane, dashed and named. */
export interface LaneLimit {
  readonly value: number;
  readonly name: string;
}

/** All lines of one quantity on one axis. */
export interface Lane {
  readonly id: string;
  readonly title: string;
  readonly scale: ChartScale;
  readonly lines: readonly LaneLine[];
  readonly limits: readonly LaneLimit[];
}
