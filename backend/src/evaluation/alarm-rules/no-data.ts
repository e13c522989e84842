import { badBits, reasonBit } from '../slots/quality-reasons';
import { Verdict } from './verdict';

/**
 * True where a point has no value that may be used. A point that was never heard is not judged (`hold`)
 * until the start grace is over, nor is a retained value of unknown age.
 */
export function judgeNoData(reasons: number, inGrace: boolean): Verdict {
  if ((reasons & badBits) === 0) return Verdict.no;
  const notYetHeard = reasons & (reasonBit.notReceived | reasonBit.ageUnknown);
  return inGrace && notYetHeard !== 0 ? Verdict.hold : Verdict.yes;
}
