import type { PermitFault } from '@ebbline/shared/contract/permit';
import type {
  ClosePermit,
  OpenPermit,
  PermitAction,
  PermitChange,
  PermitOutcome,
  PermitRecord,
} from '../permit-record';
import type { PipelineState } from '../pipeline-state';
import { allowPermits } from './allow-permits';
import { baselineOf, signsNow, waitsForOf } from './permit-baseline';

/** A permit is for work of hours to a few days; a longer one would only be forgotten. Own rule. */
export const longestPermitMs = 7 * 86_400_000;

/** Records what is about to happen; false where it can't, and then it does not happen. */
export type PermitCommit = (change: PermitChange) => boolean;

/** Opens or closes a permit, if `commit` takes it; else nothing has changed. */
export function actOnPermit(
  pipeline: PipelineState,
  action: PermitAction,
  nowMs: number,
  commit: PermitCommit = () => true,
): PermitOutcome {
  const found = action.kind === 'openPermit' ? opening(pipeline, action, nowMs) : closing(pipeline, action, nowMs);
  if (!found.ok) return found;
  const { change } = found;
  if (!commit(change)) {
    const message = `permit ${change.permit.id} can not be recorded, so it was not ${change.what}; try again`;
    return { ok: false, code: 'ACTION_NOT_RECORDED', message };
  }
  if (change.what === 'opened') pipeline.permits.set(change.permit.id, change.permit);
  else pipeline.permits.delete(change.permit.id);
  allowPermits(pipeline, change.permit.unit, nowMs);
  return found;
}

function opening(pipeline: PipelineState, action: OpenPermit, nowMs: number): PermitOutcome {
  const { site, permits } = pipeline;
  const unitIndex = site.units.findIndex(({ id }) => id === action.unit);
  const unit = site.units[unitIndex];
  if (unit === undefined) return refuse('PERMIT_UNIT_UNKNOWN', `the site has no unit ${action.unit}`);
  const branch = unit.branches.findIndex(({ id }) => id === action.branch);
  if (action.branch !== null && branch < 0)
    return refuse('PERMIT_BRANCH_UNKNOWN', `unit ${unit.id} has no branch ${action.branch}`);
  if (!(action.untilMs > nowMs && action.untilMs <= nowMs + longestPermitMs))
    return refuse('PERMIT_TIME', 'a permit ends in the future, and within 7 days from now');
  const same = [...permits.values()].find((open) => covers(open, action));
  if (same !== undefined)
    return refuse('PERMIT_OPEN_ALREADY', `permit ${same.id} of ${same.openedBy} is open for it; close that first`);
  const signs = signsNow(pipeline, unitIndex, branch);
  const baseline = baselineOf(pipeline, unitIndex, signs);
  const permit: PermitRecord = {
    id: `${unit.id}:${action.branch ?? 'loop'}:${Math.round(nowMs)}`,
    unit: unit.id,
    branch: action.branch,
    openedBy: action.operator,
    station: action.station,
    openedMs: nowMs,
    untilMs: action.untilMs,
    expectedInLeakM3PerS: action.expectedInLeakM3PerS,
    comment: action.comment,
    baseline,
    waitsFor: waitsForOf(baseline, signs),
    closedBy: null,
    closedMs: null,
  };
  return { ok: true, change: changed('opened', permit, action, nowMs) };
}

/** One for the whole loop covers each branch; one for a branch covers that branch only. */
const covers = (open: PermitRecord, action: OpenPermit): boolean =>
  open.unit === action.unit && (open.branch === null || open.branch === action.branch);

function closing({ permits }: PipelineState, action: ClosePermit, nowMs: number): PermitOutcome {
  const open = permits.get(action.permit);
  if (open === undefined) return refuse('PERMIT_UNKNOWN', `no permit ${action.permit} is open; look at the list again`);
  const permit = { ...open, closedBy: action.operator, closedMs: nowMs };
  return { ok: true, change: changed('closed', permit, action, nowMs) };
}

const changed = (
  what: PermitChange['what'],
  permit: PermitRecord,
  { operator, station, comment }: PermitAction,
  atMs: number,
): PermitChange => ({ what, permit, atMs, actor: operator, station, comment });

const refuse = (code: PermitFault, message: string): PermitOutcome => ({ ok: false, code, message });
