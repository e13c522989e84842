import { waterParameters, type WaterParameterId } from '@ebbline/shared/contract/water-parameters';
import type { UnitContext } from './judge-context';
import { usable } from './judge-context';
import { bandInForceOf } from './water-band-in-force';
import { bandWord, slotInForce, waterParameterOf } from './water-in-force';

const words = { lowLow: 'very low', low: 'low', high: 'high', highHigh: 'very high' } as const;

/** Which parameters stand outside their bands, how far, and whether a sensor or a person says so; null where none does. */
export function waterDetail({ state, unit }: UnitContext, ids: readonly WaterParameterId[]): string | null {
  const said = ids.flatMap((id) => {
    const parameter = waterParameterOf(unit, id);
    if (parameter === null) return [];
    const slot = slotInForce(state, parameter);
    const word = bandWord(usable(state, slot), bandInForceOf(unit, parameter));
    if (word === 'inBand' || word === 'unknown' || word === 'noBand') return [];
    return [
      `${waterParameters[id].title}: ${words[word]}${slot === parameter.handSlot ? ', as typed by a person' : ''}.`,
    ];
  });
  return said.length === 0 ? null : said.join(' ');
}
