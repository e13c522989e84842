import { Verdict } from './verdict';

/** What a rule found. Written anew by each rule. */
export interface Finding {
  verdict: Verdict;
  /** In `unitOfMeasure`; NaN where there is none to show. */
  value: number;
  limit: number;
  /** UCUM code, where it is another than the entry's. */
  unitOfMeasure: string | null;
  where: string | null;
  /** The signs that make the entry worse are there. */
  worse: boolean;
  /** It is there at a place that was not told with the alarm: told anew, as `where` and detail now have it. */
  again: boolean;
  /** Time to respond, s, where it is worked out; NaN: the entry's own. */
  timeToRespondS: number;
  /** Work under an open permit makes the condition normal: told as an alert, not as an alarm. */
  expected: boolean;
}

export const createFinding = (): Finding => ({
  verdict: Verdict.hold,
  value: Number.NaN,
  limit: Number.NaN,
  unitOfMeasure: null,
  where: null,
  worse: false,
  again: false,
  timeToRespondS: Number.NaN,
  expected: false,
});

export function clearFinding(finding: Finding): void {
  finding.verdict = Verdict.hold;
  finding.value = Number.NaN;
  finding.limit = Number.NaN;
  finding.unitOfMeasure = null;
  finding.where = null;
  finding.worse = false;
  finding.again = false;
  finding.timeToRespondS = Number.NaN;
  finding.expected = false;
}
