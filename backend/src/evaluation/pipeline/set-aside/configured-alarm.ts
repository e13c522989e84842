import { unitEntries } from '../../alarm-rules/catalogue/catalogue';
import { partsOf } from '../part-index';
import type { PipelineState } from '../pipeline-state';

/** The place of an alarm that the site can have, standing or not; −1 where there is none of that name. */
export function configuredAlarm(pipeline: PipelineState, name: string): number {
  const place = placeOf(pipeline, name);
  return place >= 0 && pipeline.applies[place] === 1 ? place : -1;
}

function placeOf(pipeline: PipelineState, name: string): number {
  for (const alarm of candidates(pipeline, name)) if (pipeline.index.identity(alarm).alarm === name) return alarm;
  return -1;
}

/** Only those whose name begins alike: to name every alarm of a large site takes long. */
function* candidates(pipeline: PipelineState, name: string): Generator<number> {
  const { index, site } = pipeline;
  for (const [unitIndex, unit] of site.units.entries())
    if (name.startsWith(`${unit.id}:`)) yield* ofUnit(pipeline, unitIndex);
  for (const [place, point] of index.points.entries())
    if (name.startsWith(`${site.holders[point.holder]?.id ?? ''}:`)) yield index.ofPoint(place);
  for (let alarm = index.ofGroup(0); index.groupOf(alarm) !== null; alarm += 1) yield alarm;
  for (let alarm = index.ofGateway(0); alarm < index.count; alarm += 1) yield alarm;
}

function* ofUnit({ index, site }: PipelineState, unitIndex: number): Generator<number> {
  const unit = site.units[unitIndex];
  if (unit === undefined) return;
  for (const [place, { per }] of unitEntries.entries()) {
    if (per === undefined) yield index.ofUnit(unitIndex) + place;
    else for (const part of partsOf(unit, per).keys()) yield index.parts.of(unitIndex, place) + part;
  }
}
