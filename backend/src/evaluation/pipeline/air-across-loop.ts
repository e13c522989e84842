import { outweighed } from '../alarm-rules/air-step/outweighed';
import { airAcrossLoop, airOfOneOpeningMs } from '../alarm-rules/folding';
import { unitEntryPlace, type UnitEntryId } from '../alarm-rules/entry-ids';
import type { PipelineState } from './pipeline-state';

/** Alarm of another unit of the loop that tells of the same opening and knows it better, or −1. */
export function airFirstOutOfLoop(pipeline: PipelineState, unitIndex: number, entry: UnitEntryId): number {
  if (!airAcrossLoop.includes(entry) || namesBranch(pipeline, unitIndex)) return -1;
  const place = unitEntryPlace[entry];
  const sinceMs = began(pipeline, unitIndex, place);
  let found = -1;
  let best = Number.POSITIVE_INFINITY;
  for (const other of pipeline.site.loops[pipeline.site.units[unitIndex]?.loop ?? -1]?.units ?? []) {
    const alarm = pipeline.index.ofUnit(other) + place;
    const record = other === unitIndex ? null : pipeline.book.told(alarm);
    if (record?.active !== true || !(Math.abs(record.sinceMs - sinceMs) <= airOfOneOpeningMs)) continue;
    const named = namesBranch(pipeline, other);
    const isFirst = record.sinceMs < sinceMs || (record.sinceMs === sinceMs && other < unitIndex);
    const rank = named ? Number.NEGATIVE_INFINITY : record.sinceMs;
    if ((!named && !isFirst) || rank >= best) continue;
    found = alarm;
    best = rank;
  }
  return found;
}

const namesBranch = ({ air, site }: PipelineState, unitIndex: number): boolean =>
  (air.namedBranch[unitIndex] as number) >= 0 && !outweighed(air, site, unitIndex);

/** An alarm that is about to be raised has no record yet: its condition began at what the delays say. */
function began({ book, delays, index }: PipelineState, unitIndex: number, place: number): number {
  const own = index.ofUnit(unitIndex) + place;
  const record = book.record(own);
  return record?.active === true ? record.sinceMs : (delays.trueSinceMs[own] as number);
}
