import type { Priority } from '@ebbline/shared/contract/alarm';
import { unitEntries } from '../alarm-rules/catalogue/catalogue';
import type { UnitEntry } from '../alarm-rules/entry';
import { clearFinding, type Finding, type UnitContext } from '../alarm-rules/judge-context';
import { stopWasMeant } from '../alarm-rules/plant-signs/pump-wanted';
import { higher, priorityOf } from '../alarm-rules/priority';
import { priorityOfEntry } from '../alarm-rules/priority-of-entry';
import type { ResolvedLimits } from '../alarm-rules/resolve-limits';
import { Verdict } from '../alarm-rules/verdict';
import { isOff } from './off-in-mode';

const plainPriority = unitEntries.map((entry) => priorityOfEntry(entry, false));
const worsePriority = unitEntries.map((entry) => priorityOfEntry(entry, true));
/** The mildest that folding lets an entry be, whatever time to respond its rule works out. */
const liftedTo = unitEntries.map((entry) => priorityOfEntry(entry, false, Number.POSITIVE_INFINITY));

/**
 * What an entry says of its condition in this second, before any delay: not judged where it is switched off or a meant stop makes
 * it normal, on hold where the mode has it off and nobody knows whether the stop was meant.
 * @param place of the entry in `unitEntries`
 * @param mode place of the unit's mode in `modes`
 */
export function findCondition(
  context: UnitContext,
  place: number,
  limits: ResolvedLimits,
  mode: number,
  active: boolean,
  finding: Finding,
): void {
  const entry = unitEntries[place] as UnitEntry;
  const off = isOff(place, mode, context.modeTold);
  const meant = off ? stopWasMeant(context) : null;
  clearFinding(finding);
  if (!limits.enabled || meant === true) finding.verdict = Verdict.no;
  else if (!off || meant === false) entry.judge(context, limits, active, finding);
}

/** Null: what was found is told as an alert. */
export function priorityOfFinding(place: number, finding: Finding): Priority | null {
  const entry = unitEntries[place] as UnitEntry;
  if (finding.expected) return null;
  if (Number.isNaN(finding.timeToRespondS)) return (finding.worse ? worsePriority : plainPriority)[place] ?? null;
  const { severity } = finding.worse && entry.worse !== null ? entry.worse : entry;
  return higher(liftedTo[place] ?? null, priorityOf(severity, finding.timeToRespondS));
}
