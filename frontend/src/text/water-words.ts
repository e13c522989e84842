import type { HandMethod } from '@ebbline/shared/contract/hand-entry';
import type { BandWord, WaterBand, WaterParameterState } from '@ebbline/shared/contract/water-quality';
import type { WaterParameterId } from '@ebbline/shared/contract/water-parameters';
import { isWaterParameter, waterParameters } from '@ebbline/shared/contract/water-parameters';
import type { PrintedQuantity } from './format-quantity';
import { formatPoint, formatQuantity, inWords } from './format-quantity';

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
  // Small concentrations are read in tenths of a milligram, and traces of a metal in hundredths.
  return quantity === 'concentration' && value < 0.01
    ? formatQuantity(value, quantity, { decimals: value < 0.0001 ? 2 : 1 })
    : formatQuantity(value, quantity);
};

/** A value of a point that people type, such as `water.copper.hand`: `0.05 mg/L`; of any other point as that is printed. */
export function sayHandPoint(point: string, value: number): string {
  const parameter = /^water\.(\w+)\.hand$/.exec(point)?.[1] ?? '';
  return inWords(isWaterParameter(parameter) ? printWater(parameter, value) : formatPoint(point, value, null));
}

/** A value right behind its title, or the title alone without one: `Copper 0.2 mg/L`, but `pH 8.60`, which is its own unit. */
export function titledWater(parameter: WaterParameterId, value: number | null): string {
  const { title } = waterParameters[parameter];
  if (value === null) return title;
  const printed = printWater(parameter, value);
  return `${title} ${printed.unit === title ? printed.number : inWords(printed)}`;
}

/** What can be typed at all, in whole numbers: `0 to 14 pH`. */
export function sayPossible(parameter: WaterParameterId): string {
  const { quantity, least, most } = waterParameters[parameter];
  const say = (value: number): PrintedQuantity => formatQuantity(value, quantity, { decimals: 0 });
  return `${say(least).number} to ${inWords(say(most))}`;
}

/** `8.00 to 9.50 pH`, `at most 10 NTU`; null without limits. */
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

/** How a value by hand was come by. */
export const handMethodWords: { readonly [M in HandMethod]: string } = {
  laboratory: 'laboratory',
  instrument: 'hand instrument',
  strip: 'test strip',
  titration: 'drops counted',
};
