/** A unit of measure as people read it: shown = value × factor + offset, the value in the contract's unit (SI or °C). */
export interface DisplayUnit {
  readonly unit: string;
  readonly factor: number;
  /** Left out where both begin at the same nought; a difference or an uncertainty never takes it. */
  readonly offset?: number;
  /** Where no uncertainty says how many have a meaning. */
  readonly decimals: number;
}

export type Conversion = Pick<DisplayUnit, 'factor' | 'offset'>;

export const inUnit = (value: number, { factor, offset = 0 }: Conversion): number => value * factor + offset;

/** A difference, a spread or an uncertainty: the nought of the scale does not matter to it. */
export const spreadInUnit = (spread: number, { factor }: Conversion): number => spread * factor;

export const outOfUnit = (shown: number, { factor, offset = 0 }: Conversion): number => (shown - offset) / factor;

/** Digits that a typed number keeps: none of what was set is rounded away, and no noise of the factor is shown. */
const digits = 7;
export const toTyped = (value: number, unit: Conversion): number => Number(inUnit(value, unit).toPrecision(digits));
export const fromTyped = (typed: number, unit: Conversion): number => Number(outOfUnit(typed, unit).toPrecision(12));
