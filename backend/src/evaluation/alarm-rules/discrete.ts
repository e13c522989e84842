import { Verdict } from './verdict';

/** A yes/no point: 1 is yes, 0 is no; NaN (bad) holds. */
export function judgeDiscrete(value: number): Verdict {
  if (Number.isNaN(value)) return Verdict.hold;
  return value >= 0.5 ? Verdict.yes : Verdict.no;
}
