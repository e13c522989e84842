import { judgeAbove } from './above';
import { anyOf } from './any-of';
import { judgeBelow } from './below';
import { Verdict } from './verdict';

/** True outside `low` … `high`; NaN for a side that has no limit: that side is not judged. */
export function judgeBand(value: number, low: number, high: number, deadband: number, active: boolean): Verdict {
  const below = Number.isNaN(low) ? Verdict.no : judgeBelow(value, low, deadband, active);
  const above = Number.isNaN(high) ? Verdict.no : judgeAbove(value, high, deadband, active);
  return anyOf(below, above);
}
