import { Verdict } from './verdict';

/** True where one part is true; held where none is and one cannot be judged; else false. */
export function anyOf(first: Verdict, second: Verdict): Verdict {
  if (first === Verdict.yes || second === Verdict.yes) return Verdict.yes;
  return first === Verdict.hold || second === Verdict.hold ? Verdict.hold : Verdict.no;
}
