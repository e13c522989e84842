import type { StartTrialRequest } from '@ebbline/shared/contract/limit-trial';
import { fail, ok, type Result } from '@ebbline/shared/errors/result';
import { catalogue, unitEntries } from '../../evaluation/alarm-rules/catalogue/catalogue';
import { unitEntryIds, type UnitEntryId } from '../../evaluation/alarm-rules/entry-ids';
import { compileUnitSlots } from '../../evaluation/alarm-rules/unit-slots';
import { storedPoints } from '../../evaluation/limit-trial/stored-points';
import { absentSetting, limitsOf, withProposed } from '../../evaluation/limit-trial/trial-settings';
import type { UnitEntry } from '../../evaluation/alarm-rules/entry';
import type { CompiledSite, CompiledUnit } from '../../evaluation/site/compiled-site';
import type { TrialFault } from '../../ports/trial-desk';

/** Eleven hundred days: longer than minutes are kept by default. */
const longestMs = 1_100 * 86_400_000;
/** Where a guard is not in history, a period up to this is worked out anew as a whole, exactly. */
const exactMs = 2 * 3_600_000;
const leastLeadMs = 15 * 60_000;
const mostLeadMs = 6 * 3_600_000;

/** What is to be run. */
export interface TrialPlan {
  readonly entry: UnitEntry;
  readonly units: readonly number[];
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
  const entry = unitEntries[unitEntryIds.indexOf(request.entry as UnitEntryId)];
  if (entry === undefined) return fail(noEntry(request.entry));
  const fromMs = Math.floor(Date.parse(request.from) / 1000) * 1000;
  const asked = Math.ceil(Date.parse(request.to) / 1000) * 1000;
  const toMs = Math.min(asked, Number.isNaN(nowMs) ? asked : Math.ceil(nowMs / 1000) * 1000);
  if (!(asked > fromMs)) return fail(range('to must be later than from'));
  if (!(toMs > fromMs)) return fail(range('nothing is recorded of what is still to come; begin earlier'));
  if (toMs - fromMs > longestMs) return fail(range('at most 1,100 days can be tried at once; shorten the period'));
  const units: number[] = [];
  for (const id of new Set(request.units)) {
    const at = site.units.findIndex((unit) => unit.id === id);
    const unit = site.units[at];
    if (unit === undefined)
      return fail({ code: 'UNIT_UNKNOWN', message: `the site has no unit ${id}; /api/units lists them` });
    if (!has(site, unit, entry)) {
      const message = `unit ${id} lacks what ${entry.id} is judged by, so it has no such alarm; leave it out`;
      return fail({ code: 'TRIAL_UNIT_WITHOUT', message });
    }
    const absent = absentSetting(entry.id, limitsOf(entry.id, unit.limits.get(entry.id)), request.proposed);
    if (absent !== null) {
      const message = `${entry.id} has no ${absent} of its own at unit ${id}; propose a delay, or another entry`;
      return fail({ code: 'TRIAL_SETTING_ABSENT', message });
    }
    units.push(at);
  }
  const delays = units.flatMap((at) => {
    const own = site.units[at]?.limits.get(entry.id);
    return [limitsOf(entry.id, own), limitsOf(entry.id, withProposed(own, request.proposed))];
  });
  const longestDelayMs = Math.max(...delays.map(({ onDelayMs }) => onDelayMs));
  const leadMs = Math.min(mostLeadMs, Math.max(leastLeadMs, Math.ceil(longestDelayMs / 1000) * 1000 + 60_000));
  const points = storedPoints[entry.id];
  const isExact = points?.guards === undefined || toMs - fromMs > exactMs;
  const method = points !== undefined && isExact ? 'stored' : 'recomputed';
  return ok({ entry, units, fromMs, toMs, leadMs, method, request });
}

function noEntry(entry: string): TrialFault {
  if (!Object.hasOwn(catalogue, entry))
    return { code: 'TRIAL_ENTRY_UNKNOWN', message: `there is no entry ${entry}; /api/alarm-list has them all` };
  const message = `${entry} is judged for a loop, a hall, a point, a gateway or the program; only entries of a unit can be tried`;
  return { code: 'TRIAL_ENTRY_NOT_TRIED', message };
}

const range = (message: string): TrialFault => ({ code: 'TRIAL_RANGE', message });

function has(site: CompiledSite, unit: CompiledUnit, entry: UnitEntry): boolean {
  const holder = site.holders[unit.holder];
  if (holder === undefined) return false;
  const parts = entry.per === undefined ? [-1] : [...(entry.per === 'branch' ? unit.branches : unit.plates).keys()];
  const slots = compileUnitSlots(holder, unit);
  return parts.some((part) => entry.applies?.(unit, slots, part) ?? true);
}
