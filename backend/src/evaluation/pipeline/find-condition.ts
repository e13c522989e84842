import type { Priority } from '@ebbline/shared/contract/alarm';
import { unitEntries } from '../alarm-rules/catalogue/catalogue';
import type { UnitEntry } from '../alarm-rules/entry';
import { clearFinding, type Finding, type UnitContext } from '../alarm-rules/judge-context';
import { stopWasMeant } from '../alarm-rules/plant-signs/pump-wanted';
import { higher, priorityOf } from '../alarm-rules/priority';
import { priorityOfEntry } from '../alarm-rules/priority-of-entry';
import type { ResolvedLimits } from '../alarm-rules/resolve-limits';
import { Verdict } from '../alarm-rules/verdict';

/** By place: to read the same member of forty different shapes costs more than many a rule. */
const judgeOf = unitEntries.map(({ judge }) => judge);

const plainPriority = unitEntries.map((entry) => priorityOfEntry(entry, false));
const worsePriority = unitEntries.map((entry) => priorityOfEntry(entry, true));
/** The mildest that folding lets an entry be, whatever time to respond its rule works out. */
const liftedTo = unitEntries.map((entry) => priorityOfEntry(entry, false, Number.POSITIVE_INFINITY));

/**
 * What an entry says of its condition in this second, before any delay: not judged where it is switched off or a meant stop makes
 * it normal, on hold where the mode has it off and nobody knows whether the stop was meant.
 * @param place of the entry in `unitEntries`
 * @param off whether the mode has the entry off
 */
export function findCondition(
  context: UnitContext,
  place: number,
  limits: ResolvedLimits,
  off: boolean,
  active: boolean,
  finding: Finding,
): void {
  clearFinding(finding);
  if (!off && limits.enabled) {
    (judgeOf[place] as UnitEntry['judge'])(context, limits, active, finding);
    return;
  }
  const meant = off ? stopWasMeant(context) : null;
  if (!limits.enabled || meant === true) finding.verdict = Verdict.no;
  else if (meant === false) (judgeOf[place] as UnitEntry['judge'])(context, limits, active, finding);
}

/** Null: what was found is told as an alert. */
export function priorityOfFinding(place: number, finding: Finding): Priority | null {
  const entry = unitEntries[place] as UnitEntry;
  if (finding.expected) return null;
  if (Number.isNaN(finding.timeToRespondS)) return (finding.worse ? worsePriority : plainPriority)[place] ?? null;
  const { severity } = finding.worse && entry.worse !== null ? entry.worse : entry;
  return higher(liftedTo[place] ?? null, priorityOf(severity, finding.timeToRespondS));
}
