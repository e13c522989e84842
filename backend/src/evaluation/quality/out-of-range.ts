import { zeroCelsiusK } from '@ebbline/shared/units/constants';
import { Reference } from '../site/compiled-site';
import { reasonBit } from '../slots/quality-reasons';
import type { SampleView } from '../sample/sample-view';

/** Beyond any temperature, pressure, flow or count of a plant, SI: own rule. Squares of what is below stay finite. */
const largest = 1e15;

/** Outside what the sensor can tell, or what nothing can be: a pressure below vacuum once ambient is added, a temperature below absolute zero. */
export function outOfRange({ site: { slots }, slot, own, value }: SampleView): number {
  const inside = own >= (slots.minimum[slot] ?? -Infinity) && own <= (slots.maximum[slot] ?? Infinity);
  const pressure = slots.reference[slot] !== Reference.none;
  const least = pressure ? 0 : slots.unitOfMeasure[slot] === 'Cel' ? -zeroCelsiusK : -largest;
  const real = value >= least && value <= largest;
  return inside && real ? 0 : reasonBit.outOfRange;
}
