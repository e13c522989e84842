import { Reference } from '../site/compiled-site';
import { reasonBit } from '../slots/quality-reasons';
import type { SampleView } from '../sample/sample-view';

/** Outside what the sensor can tell, or (a pressure) below vacuum once ambient is added. */
export function outOfRange({ site: { slots }, slot, own, value }: SampleView): number {
  const inside = own >= (slots.minimum[slot] ?? -Infinity) && own <= (slots.maximum[slot] ?? Infinity);
  const real = slots.reference[slot] === Reference.none || value >= 0;
  return inside && real ? 0 : reasonBit.outOfRange;
}
