import { correlationOf } from './correlation';
import { sharedPart } from './difference-parts';
import type { Exchanger } from './exchanger-state';
import { part } from './uncertainty-budget';
import type { UnitFrame } from './unit-frame';
import { partOf, uOf } from './write-point';

/** What moves an exchanger's figures: its four thermometers, and what else is in the heat of each side, as a share of it. */
export const ExchangerInput = {
  returned: 0,
  supply: 1,
  facilityReturn: 2,
  facilitySupply: 3,
  loopShare: 4,
  facilityShare: 5,
} as const;
const count = 6;
const thermometers = [
  'return.temperature',
  'supply.temperature',
  'facility.return.temperature',
  'facility.supply.temperature',
] as const;

/** By how much a figure moves with each of the inputs. */
export type Sensitivities = Float64Array;
export const noSensitivities = (): Sensitivities => new Float64Array(count);

/** Of the heat that goes over: each side's figure by its weight. */
export function heatSensitivities(exchanger: Exchanger, into: Sensitivities): void {
  const { loopRate, facilityRate, loopHeat, facilityHeat, loopWeight } = exchanger;
  const metered = loopWeight < 1;
  const ofLoop = loopWeight * loopRate;
  const ofFacility = metered ? (1 - loopWeight) * facilityRate : 0;
  into[ExchangerInput.returned] = ofLoop;
  into[ExchangerInput.supply] = -ofLoop;
  into[ExchangerInput.facilityReturn] = ofFacility;
  into[ExchangerInput.facilitySupply] = -ofFacility;
  into[ExchangerInput.loopShare] = loopWeight * loopHeat;
  into[ExchangerInput.facilityShare] = metered ? (1 - loopWeight) * facilityHeat : 0;
}

/** Of the facility's capacity rate: its meter's, or what the balance Q/rise gives it. */
export function facilityRateSensitivities(
  exchanger: Exchanger,
  rise: number,
  metered: boolean,
  into: Sensitivities,
): void {
  into.fill(0);
  const { facilityRate, loopRate } = exchanger;
  if (metered) {
    into[ExchangerInput.facilityShare] = facilityRate;
    return;
  }
  into[ExchangerInput.returned] = loopRate / rise;
  into[ExchangerInput.supply] = -loopRate / rise;
  into[ExchangerInput.facilityReturn] = -facilityRate / rise;
  into[ExchangerInput.facilitySupply] = facilityRate / rise;
  into[ExchangerInput.loopShare] = facilityRate;
}

/** Standard uncertainty of a figure from its sensitivities, part by part, with what matched pairs have in common (GUM eq. 13). */
export function exchangerParts(frame: UnitFrame, exchanger: Exchanger, by: Sensitivities): number {
  const { slot, unit } = frame.plan;
  let variance = 0;
  for (let i = 0; i < thermometers.length; i += 1) {
    const own = partOf(frame, slot[thermometers[i] ?? 'supply.temperature'], by[i] ?? 0);
    variance += own * own;
  }
  variance += ofWay(frame, (by[ExchangerInput.returned] ?? 0) * exchanger.loopInWayU);
  variance += ofWay(frame, (by[ExchangerInput.supply] ?? 0) * exchanger.loopOutWayU);
  const loop = by[ExchangerInput.loopShare] ?? 0;
  const facility = by[ExchangerInput.facilityShare] ?? 0;
  // A side that is not metered says nothing, so that its unknown uncertainty is none either.
  if (loop !== 0) variance += part(frame, 'loop heat without its thermometers', loop * exchanger.loopRestU) ** 2;
  if (facility !== 0)
    variance += part(frame, 'facility heat without its thermometers', facility * exchanger.facilityRestU) ** 2;
  if (unit.matchedPairs.length > 0) variance += ofPairs(frame, by);
  return Math.sqrt(Math.max(0, variance));
}

/** What the way through the unit's tanks is not known by moves a figure as the thermometer at its end does. */
function ofWay(frame: UnitFrame, contribution: number): number {
  return contribution === 0 ? 0 : part(frame, 'volumes.water', contribution) ** 2;
}

function ofPairs(frame: UnitFrame, by: Sensitivities): number {
  const { slot, unit } = frame.plan;
  let variance = 0;
  for (let i = 0; i < thermometers.length; i += 1)
    for (let j = i + 1; j < thermometers.length; j += 1) {
      const one = slot[thermometers[i] ?? 'supply.temperature'];
      const other = slot[thermometers[j] ?? 'supply.temperature'];
      const correlation = correlationOf(unit.matchedPairs, one, other);
      if (correlation === 0) continue;
      const both = (by[i] ?? 0) * uOf(frame, one) * (by[j] ?? 0) * uOf(frame, other);
      variance += sharedPart(frame, one, other, 2 * correlation * both);
    }
  return variance;
}
