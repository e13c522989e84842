import type { ChartScale } from './chart-scale';

/** A value, a gap (null), or nothing here because another line has a time of its own (undefined). */
export type Cell = number | null | undefined;

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
  /** Expanded uncertainty of the newest value, k = 2; null where it is not known or not to be drawn. */
  readonly uncertainty: number | null;
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
