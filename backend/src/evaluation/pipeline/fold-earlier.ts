import type { Priority } from '@ebbline/shared/contract/alarm';
import type { UnitEntry } from '../alarm-rules/entry';
import { unitEntryPlace, type UnitEntryId } from '../alarm-rules/entry-ids';
import {
  flowOutlastsMs,
  foldsAtPumpInletOnly,
  foldsUnderEarlier,
  newsAfterMs,
  outlastsMs,
} from '../alarm-rules/folding';
import { priorityOfEntry } from '../alarm-rules/priority-of-entry';
import type { AlarmRecord } from '../alarm-lifecycle/alarm-record';
import { pumpInletPlaceName } from '../site/unit-parts';
import type { PipelineState } from './pipeline-state';

/** Name of the first-out that began before this alarm of the unit or with it, is as urgent, and stands or is over a short time; or null. */
export function earlierFirstOut(
  pipeline: PipelineState,
  unitIndex: number,
  entry: UnitEntry,
  toldWith: Priority | null,
): string | null {
  const parents = foldsUnderEarlier[entry.id];
  if (parents === undefined) return null;
  const { book, index } = pipeline;
  const own = index.ofUnit(unitIndex) + unitEntryPlace[entry.id];
  const record = book.record(own);
  const sinceMs = sinceOf(pipeline, own);
  const priority = Math.min(priorityOfEntry(entry, false) ?? Infinity, toldWith ?? record?.priority ?? Infinity);
  for (const parent of parents) {
    const first = book.told(index.ofUnit(unitIndex) + unitEntryPlace[parent]);
    if (first === null || first.priority > priority || !isEarlier(first.sinceMs, sinceMs, parent, entry.id)) continue;
    const atInletOnly = foldsAtPumpInletOnly[entry.id]?.includes(parent) === true;
    if (atInletOnly && first.where !== pumpInletPlaceName) continue;
    if (wasKnown(first, sinceMs) && (atInletOnly || sinceMs - first.sinceMs > outlastsMs)) continue;
    if (!standsOrOutlasts(pipeline, unitIndex, first, entry.id)) continue;
    const name = first.foldedUnder ?? first.alarm;
    // What followed from this alarm, and still stands as it comes again, is not looked at anew yet.
    if (name !== record?.alarm) return name;
  }
  return null;
}

/**
 * Somebody had acknowledged the first-out before this began. An inlet may boil, or a source stand tripped while the standby carries, for
 * days: what comes then is news, and nothing calls any more.
 */
const wasKnown = ({ acknowledgedAtMs }: AlarmRecord, sinceMs: number): boolean =>
  acknowledgedAtMs !== null && acknowledgedAtMs < sinceMs;

/** When the condition of an alarm began, ms. Of one that is about to be raised, and of an alert, the delays say it; NaN: not known. */
export function sinceOf({ book, delays }: PipelineState, alarm: number): number {
  const record = book.record(alarm);
  const pendingMs = record?.active === true ? Number.NaN : (delays.trueSinceMs[alarm] as number);
  return Number.isNaN(pendingMs) ? (record?.sinceMs ?? Number.NaN) : pendingMs;
}

/** The first-out is old, and was known before this began: then this is no consequence that somebody expects, but news. */
export const isOldNews = (first: AlarmRecord | null, sinceMs: number): boolean =>
  first !== null && wasKnown(first, sinceMs) && sinceMs - first.sinceMs > newsAfterMs;

/** Signs of one event are seen within so much of each other, in any order. Own rule. */
const togetherMs = 10_000;

/** Two that may each be the other's first-out never fold under each other: of one and the same time neither does. */
function isEarlier(firstMs: number, sinceMs: number, parent: UnitEntryId, child: UnitEntryId): boolean {
  const eitherWay = foldsUnderEarlier[parent]?.includes(child) === true;
  return eitherWay ? firstMs < sinceMs : firstMs <= sinceMs + togetherMs;
}

/** The first-out is in alarm, or has been over for so short a time that what follows from it may still stand. */
export function standsOrOutlasts(
  { plant, steppedMs }: PipelineState,
  unitIndex: number,
  first: Pick<AlarmRecord, 'active' | 'stateSinceMs'>,
  child: UnitEntryId,
): boolean {
  if (first.active) return true;
  const endsMs = first.stateSinceMs + (child === 'FLOW-2' ? flowOutlastsMs : outlastsMs);
  if (!((steppedMs[unitIndex] as number) < endsMs)) return false;
  const { foldEndsMs } = plant.runs;
  if (!(endsMs >= (foldEndsMs[unitIndex] as number))) foldEndsMs[unitIndex] = endsMs;
  return true;
}

/** Once a second: true where something has just ceased to be the consequence of an alarm that is over. */
export function outlastingEnds({ plant, steppedMs }: PipelineState, unitIndex: number): boolean {
  const { foldEndsMs } = plant.runs;
  if (!((steppedMs[unitIndex] as number) >= (foldEndsMs[unitIndex] as number))) return false;
  foldEndsMs[unitIndex] = Number.NaN;
  return true;
}
