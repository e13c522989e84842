import { unitEntries } from '../../alarm-rules/catalogue/catalogue';
import { partsOf } from '../part-index';
import type { PipelineState } from '../pipeline-state';

/**
 * Where a configured alarm can be on its unit, as rules name the place when they raise it: a branch or plate by its name, a point or a
 * gateway by its id; null where it is about the unit or hall as a whole.
 */
export function placeOfAlarm({ index, site }: PipelineState, alarm: number): string | null {
  const judged = index.judgedOf(alarm);
  if (judged !== null) {
    const unit = site.units[judged.unit];
    const per = unitEntries[judged.place]?.per;
    return unit === undefined || per === undefined ? null : (partsOf(unit, per)[judged.part]?.name ?? null);
  }
  const point = index.points[index.pointOf(alarm)];
  if (point !== undefined) return site.slots.pointId[point.slot] ?? null;
  return index.systemPlaceOf(alarm) >= 0 ? 'this program' : (site.gateways[alarm - index.ofGateway(0)]?.id ?? null);
}
