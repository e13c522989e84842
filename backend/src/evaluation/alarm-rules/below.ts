import { Verdict } from './verdict';

/**
 * True below `limit`; once true, false again only at `limit + deadband` or above.
 * @param value in the unit of `limit`; NaN (bad) holds
 */
export function judgeBelow(value: number, limit: number, deadband: number, active: boolean): Verdict {
  if (Number.isNaN(value)) return Verdict.hold;
  return value < (active ? limit + deadband : limit) ? Verdict.yes : Verdict.no;
}
