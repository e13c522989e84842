import type { BandWord, WaterBand, WaterParameterState } from '@ebbline/shared/contract/water-quality';
import type { WaterParameterId } from '@ebbline/shared/contract/water-parameters';
import { waterParameters } from '@ebbline/shared/contract/water-parameters';
import type { PrintedQuantity } from './format-quantity';
import { formatQuantity, inWords } from './format-quantity';

export const bandWordText: { readonly [W in BandWord]: string } = {
  lowLow: 'far below its band',
  low: 'below its band',
  inBand: 'in its band',
  high: 'above its band',
  highHigh: 'far above its band',
  unknown: 'not known',
  noBand: 'no band stated',
};

/** True where the value itself asks for somebody; that nothing is known is said, not marked. */
export const isOutside = (word: BandWord): boolean =>
  word === 'lowLow' || word === 'low' || word === 'high' || word === 'highHigh';

/** A value of a parameter as people read it. */
export const printWater = (parameter: WaterParameterId, value: number): PrintedQuantity => {
  const { quantity } = waterParameters[parameter];
  // Small concentrations are read in tenths of a milligram.
  return quantity === 'concentration' && value < 0.01
    ? formatQuantity(value, quantity, { decimals: 1 })
    : formatQuantity(value, quantity);
};

/** `8.0 to 9.5 pH`, `at most 10 NTU`; null without limits. */
export function sayBand(parameter: WaterParameterId, { low, high }: WaterBand): string | null {
  const say = (value: number): string => inWords(printWater(parameter, value));
  if (low !== null && high !== null) {
    const [from, to] = [printWater(parameter, low), say(high)];
    return `${from.number} to ${to}`;
  }
  if (high !== null) return `at most ${say(high)}`;
  return low === null ? null : `at least ${say(low)}`;
}

/** As what it is counted, where the title alone does not say so in the site's choice. */
export const waterTitle = ({ title, shownAs }: Pick<WaterParameterState, 'title' | 'shownAs'>): string =>
  shownAs === null ? title : `${title.split(',')[0] ?? title}, as ${shownAs === 'MoO4' ? 'MoO₄' : 'Mo'}`;

/** A unit of measure in which a value can be typed: as the server names it, and as people write it. */
export interface TypedUnit {
  readonly name: string;
  readonly label: string;
}
const same = (name: string): TypedUnit => ({ name, label: name });

const kinds: { readonly [quantity: string]: readonly TypedUnit[] } = {
  conductivity: [{ name: 'uS/cm', label: 'µS/cm' }, same('mS/cm')],
  ph: [{ name: '1', label: 'pH' }],
  concentration: [same('mg/L'), same('g/L')],
  turbidity: [same('NTU')],
  ratio: [same('%')],
  bacteria: [same('CFU/mL')],
};

/** The units in which a parameter can be typed, the usual one first. */
export const typedUnits = (parameter: WaterParameterId): readonly TypedUnit[] =>
  kinds[waterParameters[parameter].quantity] ?? [same(waterParameters[parameter].unit)];
