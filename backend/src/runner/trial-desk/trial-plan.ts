import type { StartTrialRequest } from '@ebbline/shared/contract/limit-trial';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { catalogue, groupEntries, unitEntries } from '../../evaluation/alarm-rules/catalogue/catalogue';
import type { GroupEntry, UnitEntry } from '../../evaluation/alarm-rules/entry';
import { storedPoints } from '../../evaluation/limit-trial/stored-points';
import { absentSetting, limitsOf, withProposed } from '../../evaluation/limit-trial/trial-settings';
import type { CompiledSite, CompiledUnit } from '../../evaluation/site/compiled-site';
import type { TrialFault } from '../../ports/trial-desk';
import { groupHas, groupOfUnit, unitHas, type TrialSubject } from './trial-subject';

/** Eleven hundred days: longer than minutes are kept by default. */
const longestMs = 1_100 * 86_400_000;
/** Where a guard is not in history, a period up to this is worked out anew as a whole, exactly. */
const exactMs = 2 * 3_600_000;
const leastLeadMs = 15 * 60_000;
const mostLeadMs = 6 * 3_600_000;
/** What follows water looks at the steps of an hour, and as many again before it says that a rise is over. */
const groupLeadMs = 4 * 3_600_000;

/** What is to be run. */
export interface TrialPlan {
  readonly entry: UnitEntry | GroupEntry;
  /** In the order asked for; a loop or a hall once, however many of its units were asked for. */
  readonly subjects: readonly TrialSubject[];
  readonly fromMs: number;
  readonly toMs: number;
  /** Before `fromMs`, so that delays and windows are filled by then. */
  readonly leadMs: number;
  readonly method: 'stored' | 'recomputed';
  readonly request: StartTrialRequest;
}

/** What a request asks for, or why it can't be tried. */
export function planTrial(
  site: CompiledSite,
  request: StartTrialRequest,
  nowMs: number,
): Result<TrialPlan, TrialFault> {
  const entry = [...unitEntries, ...groupEntries].find(({ id }) => id === request.entry);
  if (entry === undefined) return fail(noEntry(request.entry));
  const fromMs = Math.floor(Date.parse(request.from) / 1000) * 1000;
  const asked = Math.ceil(Date.parse(request.to) / 1000) * 1000;
  const toMs = Math.min(asked, Number.isNaN(nowMs) ? asked : Math.ceil(nowMs / 1000) * 1000);
  if (!(asked > fromMs)) return fail(range('to must be later than from'));
  if (!(toMs > fromMs)) return fail(range('nothing is recorded of what is still to come; begin earlier'));
  if (toMs - fromMs > longestMs) return fail(range('at most 1,100 days can be tried at once; shorten the period'));
  const absent = absentSetting(entry.id, request.proposed);
  if (absent !== null) {
    const message = `${entry.id} has no ${absent} of its own; propose a delay, or another entry`;
    return fail({ code: 'TRIAL_SETTING_ABSENT', message });
  }
  const subjects: TrialSubject[] = [];
  for (const id of new Set(request.units)) {
    const at = site.units.findIndex((unit) => unit.id === id);
    const unit = site.units[at];
    if (unit === undefined)
      return fail({ code: 'UNIT_UNKNOWN', message: `the site has no unit ${id}; /api/units lists them` });
    const subject = subjectOf(site, entry, at, unit);
    if (subject === null) {
      const message = `unit ${id} lacks what ${entry.id} is judged by, so it has no such alarm; leave it out`;
      return fail({ code: 'TRIAL_UNIT_WITHOUT', message });
    }
    if (subject.group === null || subjects.every(({ group }) => group !== subject.group)) subjects.push(subject);
  }
  const delays = subjects.flatMap(({ unit }) => {
    const own = site.units[unit]?.limits.get(entry.id);
    return [limitsOf(entry.id, own), limitsOf(entry.id, withProposed(own, request.proposed))];
  });
  const longestDelayMs = Math.max(...delays.map(({ onDelayMs }) => onDelayMs));
  const leastMs = isOfGroup(entry) ? groupLeadMs : leastLeadMs;
  const leadMs = Math.min(mostLeadMs, Math.max(leastMs, Math.ceil(longestDelayMs / 1000) * 1000 + 60_000));
  const method = methodOf(entry, toMs - fromMs);
  return ok({ entry, subjects, fromMs, toMs, leadMs, method, request });
}

export const isOfGroup = (entry: UnitEntry | GroupEntry): entry is GroupEntry =>
  entry.per === 'loop' || entry.per === 'hall';

function subjectOf(
  site: CompiledSite,
  entry: UnitEntry | GroupEntry,
  at: number,
  unit: CompiledUnit,
): TrialSubject | null {
  if (!isOfGroup(entry)) return unitHas(site, unit, entry) ? { unit: at, group: null } : null;
  const group = groupOfUnit(entry, unit);
  const [first] = (entry.per === 'loop' ? site.loops : site.halls)[group]?.units ?? [];
  return first !== undefined && groupHas(site, entry, group) ? { unit: first, group } : null;
}

function methodOf(entry: UnitEntry | GroupEntry, spanMs: number): TrialPlan['method'] {
  if (isOfGroup(entry)) return 'stored';
  const points = storedPoints[entry.id];
  return points !== undefined && (points.guards === undefined || spanMs > exactMs) ? 'stored' : 'recomputed';
}

function noEntry(entry: string): TrialFault {
  if (!Object.hasOwn(catalogue, entry))
    return { code: 'TRIAL_ENTRY_UNKNOWN', message: `there is no entry ${entry}; /api/alarm-list has them all` };
  const message = `${entry} is judged for points, gateways or the program by rules of the program itself: none of it can be set, so there is nothing to try; /api/alarm-performance tells how often it was told, and /api/alarms/journal each time`;
  return { code: 'TRIAL_ENTRY_NOT_TRIED', message };
}

const range = (message: string): TrialFault => ({ code: 'TRIAL_RANGE', message });
