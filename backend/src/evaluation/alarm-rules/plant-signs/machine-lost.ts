import { Verdict } from '../verdict';

/**
 * A machine that is wanted does not run. Feedback that is bad holds; so does a wish that is not known.
 * @param wanted null: nothing says whether it is wanted
 */
export function judgeMachine(running: number, wanted: boolean | null): Verdict {
  if (running >= 0.5) return Verdict.no;
  if (wanted === false) return Verdict.no;
  return Number.isNaN(running) || wanted === null ? Verdict.hold : Verdict.yes;
}
