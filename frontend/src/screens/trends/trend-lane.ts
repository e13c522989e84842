import type { Lane, LaneLine } from '../../charts/lane';

/** A line with what it is of. */
export interface TrendLine extends LaneLine {
  readonly unit: string;
  readonly point: string;
  /** How it differs from the line that it is held beside, in words; null: it is none that is. */
  readonly beside: string | null;
  /** True where the newest value of the point is the end of this line. */
  readonly isOfNow: boolean;
}

export interface TrendLane extends Lane {
  readonly lines: readonly TrendLine[];
}
