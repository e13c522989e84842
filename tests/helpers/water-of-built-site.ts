import { handPoint, waterParameterIds } from '@ebbline/shared/contract/water-parameters';
import { sensorPoint } from '../../backend/src/evaluation/site/compile-water';
import type { CompiledWater } from '../../backend/src/evaluation/site/compiled-water';
import { defaultWaterBands } from '../../backend/src/evaluation/site/default-water-bands';

/** Every parameter whose sensor's point or typed point the site has, with the default band. */
export const waterOf = (slotOf: (point: string) => number): CompiledWater['parameters'] =>
  waterParameterIds.flatMap((id) => {
    const [sensorSlot, handSlot] = [slotOf(sensorPoint(id)), slotOf(handPoint(id))];
    if (sensorSlot < 0 && handSlot < 0) return [];
    const open = { lowLow: NaN, low: NaN, high: NaN, highHigh: NaN };
    const band = { ...open, ...defaultWaterBands[id] };
    return [{ id, band, sensorSlot, handSlot, dueMs: NaN, lastCalibration: null }];
  });

export const waterNotStated: CompiledWater = {
  conductivityCoefficient: 0.02,
  phSlopeOf25: false,
  molybdateShownAs: 'Mo',
  parameters: [],
};
