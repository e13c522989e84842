import { Verdict } from './verdict';

/**
 * True above `limit`; once true, false again only at `limit − deadband` or below.
 * @param value in the unit of `limit`; NaN (bad) holds
 */
export function judgeAbove(value: number, limit: number, deadband: number, active: boolean): Verdict {
  if (Number.isNaN(value)) return Verdict.hold;
  return value > (active ? limit - deadband : limit) ? Verdict.yes : Verdict.no;
}
