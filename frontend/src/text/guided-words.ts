import type { GuidedQuantity } from '@ebbline/shared/contract/guided-quantity';
import type { GuidedEnd, GuidedFigure, GuidedVerdict } from '@ebbline/shared/contract/guided-test';
import { formatQuantity, inWords } from './format-quantity';

export const guidedVerdictWords: { readonly [V in GuidedVerdict]: string } = {
  passes: 'passes',
  fails: 'fails',
  notDecided: 'not decided',
};

/** Why a test is over, as it stands beside its name. */
export const guidedEndWords: { readonly [E in GuidedEnd]: string } = {
  completed: 'went through',
  cancelled: 'cancelled',
  neverSteady: 'given up: never steady',
  gateLost: 'broken off: its state was left',
  inputBad: 'broken off: a reading was lost',
  alarm: 'broken off by an alarm',
  configuration: 'broken off: the site file was changed',
  interrupted: 'broken off: the program was stopped meanwhile',
};

const finer: Partial<Record<GuidedQuantity, number>> = {
  pressureDifference: 1,
  absolutePressure: 1,
  temperatureDifference: 1,
};

/** A value with its interval, or alone. */
export function sayQuantity(value: number, quantity: GuidedQuantity, uncertainty: number | null = null): string {
  if (uncertainty !== null && uncertainty > 0) return inWords(formatQuantity(value, quantity, { uncertainty }));
  return inWords(formatQuantity(value, quantity, { finer: finer[quantity] }));
}

/** By how much a value moved, or may be off: kelvin of a temperature, and no absolute pressure. */
const differences: Partial<Record<GuidedQuantity, GuidedQuantity>> = {
  temperature: 'temperatureDifference',
  absolutePressure: 'pressureDifference',
};
export const sayDifference = (value: number, quantity: GuidedQuantity, uncertainty: number | null = null): string =>
  sayQuantity(value, differences[quantity] ?? quantity, uncertainty);

/** What one source brings to an uncertainty, with as many digits as an uncertainty has. */
export const sayPart = (part: number, quantity: GuidedQuantity): string => {
  const printed = formatQuantity(part, differences[quantity] ?? quantity, { uncertainty: part });
  return inWords({ ...printed, uncertainty: null });
};

/** `−0.40 to 0.40 kPa`, `at most 12.0 °C`; empty where there is no limit. */
export function sayLimits({ low, high, quantity }: Pick<GuidedFigure, 'low' | 'high' | 'quantity'>): string {
  if (low !== null && high !== null) return `${sayQuantity(low, quantity)} to ${sayQuantity(high, quantity)}`;
  if (high !== null) return `at most ${sayQuantity(high, quantity)}`;
  return low === null ? '' : `at least ${sayQuantity(low, quantity)}`;
}
