/** A deadband wider than this part of the limit, and than so many times the present one, would change what the alarm is. Own rule. */
const widestShareOfLimit = 0.05;
const widestTimes = 5;
/** Beyond what was seen, so that the next spell fits in as well. */
const spare = 1.1;

export interface DeadbandInputs {
  readonly side: 'above' | 'below';
  readonly limit: number;
  /** The present one. */
  readonly deadband: number;
  /** Values while the condition was gone, second by second; NaN: none. */
  readonly values: Iterable<number>;
}

export interface DeadbandFound {
  readonly deadband: number;
  /** How far the value came back past the limit at most. */
  readonly wayBack: number;
}

/**
 * The deadband that holds the alarm through each spell: a tenth more than the value came back past the limit, in two figures. Null
 * where there is no value, or where it would have to be so wide that a delay is the better cure.
 */
export function deadbandOver({ side, limit, deadband, values }: DeadbandInputs): DeadbandFound | null {
  let wayBack = Number.NaN;
  for (const value of values) {
    const back = side === 'above' ? limit - value : value - limit;
    if (!Number.isNaN(back) && !(back <= wayBack)) wayBack = back;
  }
  if (!(wayBack > deadband)) return null;
  const found = twoFiguresUp(wayBack * spare);
  const widest = Math.max(widestTimes * deadband, widestShareOfLimit * Math.abs(limit));
  return found > widest ? null : { deadband: found, wayBack };
}

/** The next number of two figures that is not smaller; exact in decimal. */
function twoFiguresUp(value: number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 1);
  return Number((Math.ceil(value / step - 1e-9) * step).toPrecision(2));
}
