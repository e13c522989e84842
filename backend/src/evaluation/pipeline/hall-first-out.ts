import { unitEntryIds } from '../alarm-rules/entry-ids';
import { foldsAcrossHall, type AcrossHall } from '../alarm-rules/folding';
import { sharesCause } from './common-cause';
import type { PipelineState } from './pipeline-state';

/**
 * The first alarm of the same entry in the hall, where that of this unit may fold under it: one cause told by many units. The
 * first is the oldest that is active; it is looked for only when alarms come or go.
 */
export function hallFirstOut(
  pipeline: PipelineState,
  unitIndex: number,
  place: number,
  rule: AcrossHall,
): string | null {
  const { book, index, site } = pipeline;
  const hall = site.units[unitIndex]?.hall ?? -1;
  const own = index.ofUnit(unitIndex) + place;
  const key = hall * places + place;
  const known = pipeline.hallFirstOut.get(key);
  let first = known === undefined ? null : book.told(known);
  if (first === null || !first.active) {
    const found = oldest(pipeline, hall, place, rule);
    if (found < 0) {
      pipeline.hallFirstOut.delete(key);
      return null;
    }
    pipeline.hallFirstOut.set(key, found);
    first = book.told(found);
  }
  if (first === null || pipeline.hallFirstOut.get(key) === own) return null;
  if (!isOfCause(pipeline, unitIndex, place, rule)) return null;
  // An alarm that is about to be raised has no record yet: its condition began at what the delays say.
  const record = book.record(own);
  const sinceMs =
    record !== null && record.state !== 'normal' ? record.sinceMs : (pipeline.delays.trueSinceMs[own] ?? Number.NaN);
  return Math.abs(sinceMs - first.sinceMs) <= rule.withinMs ? (first.foldedUnder ?? first.alarm) : null;
}

/** The unit's alarm was the hall's first-out of an entry and is so no more: what folded under it has to be looked at again. */
export function wasFirstOutOfHall(
  { book, hallFirstOut: firsts, index, site }: PipelineState,
  unitIndex: number,
): boolean {
  const hall = site.units[unitIndex]?.hall ?? -1;
  let was = false;
  for (const place of placesAcrossHall) {
    const own = index.ofUnit(unitIndex) + place;
    if (firsts.get(hall * places + place) !== own || book.told(own)?.active === true) continue;
    firsts.delete(hall * places + place);
    was = true;
  }
  return was;
}

const placesAcrossHall = unitEntryIds.flatMap((id, place) => (foldsAcrossHall[id] === undefined ? [] : [place]));

/** More than there are entries: makes one number of hall and entry. */
const places = 1024;

function oldest(pipeline: PipelineState, hall: number, place: number, rule: AcrossHall): number {
  let found = -1;
  let sinceMs = Number.POSITIVE_INFINITY;
  for (const unit of pipeline.site.halls[hall]?.units ?? []) {
    const alarm = pipeline.index.ofUnit(unit) + place;
    const record = pipeline.delays.active[alarm] === 1 ? pipeline.book.told(alarm) : null;
    if (record === null || !record.active || record.sinceMs >= sinceMs) continue;
    if (!isOfCause(pipeline, unit, place, rule)) continue;
    found = alarm;
    sinceMs = record.sinceMs;
  }
  return found;
}

/** What came of a common cause stays of it, though a mean of hours forgets that it was so. */
function isOfCause(pipeline: PipelineState, unitIndex: number, place: number, { cause }: AcrossHall): boolean {
  const parent = pipeline.book.record(pipeline.index.ofUnit(unitIndex) + place)?.foldedUnder ?? null;
  if (parent?.endsWith(`:${unitEntryIds[place] ?? ''}`) === true) return true;
  return sharesCause(pipeline, pipeline.site.units[unitIndex]?.hall ?? -1, unitIndex, cause);
}
