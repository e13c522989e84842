import { isSetAside } from '../alarm-lifecycle/mode-facts';
import { catalogue } from '../alarm-rules/catalogue/catalogue';
import { unitEntryPlace } from '../alarm-rules/entry-ids';
import type { FeedingPoint } from '../alarm-rules/feeding-points';
import { drivesOutOfRange } from '../alarm-rules/folding';
import type { CompiledUnit } from '../site/compiled-site';
import { badBits, reasonBit } from '../slots/quality-reasons';
import { isOldNews, sinceOf } from './fold-earlier';
import type { PipelineState } from './pipeline-state';

/** Name of what the loss of a point folds under now: the silence of its gateway, or what drives it out of its range; or null. */
export function instrumentParent(pipeline: PipelineState, point: FeedingPoint, alarm: number): string | null {
  return gatewayAlarm(pipeline, point.slot) ?? driver(pipeline, point, alarm);
}

/** Name of the COM-1 that a slot's INS-1 folds under now, or null. */
function gatewayAlarm(pipeline: PipelineState, slot: number): string | null {
  const gateway = pipeline.gatewayOfSlot[slot] as number;
  if (gateway < 0) return null;
  const alarm = pipeline.index.ofGateway(gateway);
  const record = pipeline.book.record(alarm);
  if (record !== null && isSetAside(record)) return null;
  return pipeline.delays.active[alarm] === 1
    ? `${pipeline.site.gateways[gateway]?.id ?? ''}:${catalogue['COM-1'].id}`
    : null;
}

function driver(pipeline: PipelineState, { holder, slot }: FeedingPoint, alarm: number): string | null {
  const { book, index, site, state } = pipeline;
  const bad = (state.reasons[slot] as number) & badBits;
  // Good again, and told until its delay is over: what drove it out still tells why.
  if (bad !== 0 && (bad & reasonBit.outOfRange) === 0) return null;
  const unit = index.unitOf(holder);
  for (const entry of unit < 0 ? [] : (drivesOutOfRange[site.slots.pointId[slot] ?? ''] ?? [])) {
    const record = book.told(index.ofUnit(unit) + unitEntryPlace[entry]);
    if (record?.active === true && !isOldNews(record, sinceOf(pipeline, alarm)))
      return record.foldedUnder ?? record.alarm;
  }
  return null;
}

/** Looks again at the points of a unit that are told as lost. */
export function refoldInstruments(pipeline: PipelineState, unitIndex: number): void {
  const { holder } = pipeline.site.units[unitIndex] as CompiledUnit;
  const { firstPoint, points } = pipeline.index;
  for (let place = firstPoint[holder] as number; place < (firstPoint[holder + 1] as number); place += 1) {
    const alarm = pipeline.index.ofPoint(place);
    if (pipeline.book.record(alarm) === null) continue;
    pipeline.book.fold(alarm, instrumentParent(pipeline, points[place] as FeedingPoint, alarm));
  }
}
