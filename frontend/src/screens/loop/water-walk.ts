import type { Reading } from '@ebbline/shared/contract/reading';

/** What a unit's own tanks gain and what all tanks of the loop gain together, m³/s. */
export interface WaterRates {
  readonly supplyTank: Reading | undefined;
  readonly separator: Reading | undefined;
  readonly loop: Reading | undefined;
}

/** Less than this is slosh: 2 L/min (common practice, no source). m³/s */
const sloshM3PerS = 2 / 60_000;
/** Water that walks is missing from one unit and found in another: the sum moves by less than this share of it. */
const shareOfSum = 0.3;

const known = (reading: Reading | undefined): number | null =>
  reading === undefined || reading.quality === 'bad' ? null : reading.value;

/**
 * Says where water goes between units of one loop; null where it does not, or where it can't be told. One unit
 * gains what another loses while the sum stands: nothing has leaked.
 * @param others names of the other units on the loop
 */
export function sayWaterWalk(rates: WaterRates, unit: string, others: readonly string[]): string | null {
  const own = [known(rates.supplyTank), known(rates.separator)].filter((rate): rate is number => rate !== null);
  const loop = known(rates.loop);
  if (others.length === 0 || own.length === 0 || loop === null) return null;
  const gained = own.reduce((sum, rate) => sum + rate, 0);
  if (Math.abs(gained) < sloshM3PerS || Math.abs(loop) > shareOfSum * Math.abs(gained)) return null;
  const rest = others.join(', ');
  return gained > 0 ? `Water is moving from ${rest} to ${unit}.` : `Water is moving from ${unit} to ${rest}.`;
}
