import type { CompiledUnit } from '../../site/compiled-site';
import type { PermitRecord } from '../permit-record';
import type { PipelineState } from '../pipeline-state';
import { allowPermits } from './allow-permits';
import { signsNow, type PermitSigns } from './permit-baseline';
import { gasTolerance, isBack } from './permit-tolerance';

/** All signs have to be back for so long without a break before a permit closes by itself. Own rule. */
export const backForMs = 120_000;
/** One of them has to be away for so long before the opening counts as seen: a swing is no opening. Own rule. */
export const seenForMs = 5000;
/** Where the opening was never seen, a permit stays open at least so long, and half the time that was planned. Own rule. */
export const unseenForMs = 30 * 60_000;

interface Watch {
  /** An opening was seen: a sign has been away from its baseline. */
  seen: boolean;
  /** The least gas load since then, of one opened beside other work, whose air is no sign of its own opening; else −∞. Free m³/s. */
  leastGas: number;
  awaySinceMs: number;
  backSinceMs: number;
  /** Its time is over, and what it expected counts no more: worked out once in a run. */
  isLetGo: boolean;
}

const watches = new WeakMap<PermitRecord, Watch>();

/** Permits of one unit, once a second: who is overdue, and which may close as all is back where it was. */
export function watchPermits(pipeline: PipelineState, unitIndex: number, nowMs: number): void {
  if (pipeline.openPermits.count[unitIndex] === 0) return;
  const unit = pipeline.site.units[unitIndex] as CompiledUnit;
  for (const open of [...pipeline.permits.values()]) {
    if (open.unit !== unit.id) continue;
    const watch = watchOf(pipeline, unitIndex, open);
    const permit = nowMs >= open.untilMs ? overdue(pipeline, open, watch, nowMs) : open;
    if (mayClose(pipeline, unitIndex, unit, permit, watch, nowMs)) close(pipeline, permit, nowMs);
  }
}

/** The permit as it stands from now on; told once, and then on its record. */
function overdue(pipeline: PipelineState, open: PermitRecord, watch: Watch, nowMs: number): PermitRecord {
  if (!watch.isLetGo) allowPermits(pipeline, open.unit, nowMs);
  watch.isLetGo = true;
  if (open.isOverdueTold === true) return open;
  const permit: PermitRecord = { ...open, isOverdueTold: true };
  pipeline.permits.set(permit.id, permit);
  watches.set(permit, watch);
  tell(pipeline, 'overdue', permit, nowMs, 'its time is over and it is not closed');
  return permit;
}

function mayClose(
  pipeline: PipelineState,
  unitIndex: number,
  unit: CompiledUnit,
  permit: PermitRecord,
  watch: Watch,
  nowMs: number,
): boolean {
  if (permit.waitsFor.length === 0) return false;
  const branch = permit.branch === null ? -1 : unit.branches.findIndex(({ id }) => id === permit.branch);
  const signs = signsNow(pipeline, unitIndex, branch);
  const { gasLoad } = signs;
  if (gasLoad < watch.leastGas || Number.isNaN(watch.leastGas)) watch.leastGas = gasLoad;
  const away = permit.waitsFor.filter((sign) => !isBack(pipeline, unitIndex, permit, signs, sign));
  if (away.length > 0) {
    watch.backSinceMs = Number.NaN;
    // A sign that is not known is not back, and it is not away either.
    if (Number.isNaN(signs.branchFlow + signs.gasLoad + signs.waterVolume) && !isKnown(permit, signs)) return false;
    const ofOthers = gasLoad <= watch.leastGas + gasTolerance(pipeline, unitIndex);
    if (ofOthers && away.every((sign) => sign === 'gasLoad')) watch.awaySinceMs = Number.NaN;
    else if (Number.isNaN(watch.awaySinceMs)) watch.awaySinceMs = nowMs;
    if (nowMs - watch.awaySinceMs >= seenForMs) watch.seen = true;
    return false;
  }
  watch.awaySinceMs = Number.NaN;
  if (Number.isNaN(watch.backSinceMs)) watch.backSinceMs = nowMs;
  if (nowMs - watch.backSinceMs < backForMs) return false;
  const unseenMs = Math.max(unseenForMs, (permit.untilMs - permit.openedMs) / 2);
  return watch.seen || nowMs - permit.openedMs >= unseenMs;
}

/** Every sign that is waited for has a value now. */
const isKnown = ({ waitsFor }: PermitRecord, signs: PermitSigns): boolean =>
  waitsFor.every((sign) => !Number.isNaN(Number(signs[signOf[sign]])));

const signOf = {
  branchFlow: 'branchFlow',
  gasLoad: 'gasLoad',
  level: 'waterVolume',
  isolation: 'isIsolated',
} as const satisfies Record<PermitRecord['waitsFor'][number], keyof PermitSigns>;

function close(pipeline: PipelineState, permit: PermitRecord, nowMs: number): void {
  pipeline.permits.delete(permit.id);
  allowPermits(pipeline, permit.unit, nowMs);
  const closed = { ...permit, closedBy: null, closedMs: nowMs };
  tell(pipeline, 'closed', closed, nowMs, allBackText(permit));
}

/** Says no more than was looked at. */
function allBackText({ waitsFor }: PermitRecord): string {
  const said = waitsFor.flatMap((sign) => (sign === 'isolation' ? [] : [wordOf[sign]]));
  const last = said.at(-1) ?? '';
  const all = said.length > 1 ? `${said.slice(0, -1).join(', ')} and ${last} are` : `${last} is`;
  const isolation = waitsFor.includes('isolation') ? '; the branch is not isolated' : '';
  return `${all} back where ${said.length > 1 ? 'they were' : 'it was'} before the work${isolation}`;
}

const wordOf = { branchFlow: 'flow', gasLoad: 'gas load', level: 'level' } as const;

function tell(
  pipeline: PipelineState,
  what: 'closed' | 'overdue',
  permit: PermitRecord,
  atMs: number,
  comment: string,
): void {
  pipeline.permitChanges.push({ what, permit, atMs, actor: null, station: null, comment });
}

function watchOf({ openPermits }: PipelineState, unitIndex: number, permit: PermitRecord): Watch {
  const known = watches.get(permit);
  if (known !== undefined) return known;
  const leastGas = openPermits.count[unitIndex] === 1 ? Number.NEGATIVE_INFINITY : Number.NaN;
  const made = { seen: false, leastGas, awaySinceMs: Number.NaN, backSinceMs: Number.NaN, isLetGo: false };
  watches.set(permit, made);
  return made;
}
