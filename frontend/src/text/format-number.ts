/** Numbers as print has them: true minus sign, thin space between thousands, digits asked for. */
const minus = '−';
const thinSpace = '\u202f';

/**
 * @param decimals below nought rounds to tens, hundreds and so on
 * @param keepsSign a value below nought keeps its minus where it rounds to nought: on which side it is matters
 */
export function formatNumber(value: number, decimals: number, keepsSign = false): string {
  const step = 10 ** Math.max(0, -decimals);
  const rounded = decimals < 0 ? Math.round(Math.abs(value) / step) * step : Math.abs(value);
  return grouped(rounded.toFixed(Math.max(0, decimals)), value < 0, keepsSign);
}

function grouped(text: string, negative: boolean, keepsSign: boolean): string {
  const [whole = '0', fraction] = text.split('.');
  const thousands = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, thinSpace) : whole;
  const digits = fraction === undefined ? thousands : `${thousands}.${fraction}`;
  return negative && (keepsSign || Number(text) !== 0) ? `${minus}${digits}` : digits;
}

/**
 * Decimals that an expanded uncertainty leaves meaning to: two significant digits of it where one would round it by
 * more than a quarter (it begins with 1 to 1.4), else one; GUM 7.2.6 asks for at most two. From 10 on always two:
 * whole numbers, and from 100 on tens, said as decimals below nought. Never more than six.
 */
export function decimalsFor(uncertainty: number): number | undefined {
  if (!Number.isFinite(uncertainty) || uncertainty <= 0) return undefined;
  const exponent = Math.floor(Math.log10(uncertainty));
  const leading = uncertainty / 10 ** exponent;
  const significant = leading < 1.495 ? 2 : 1;
  return exponent >= 1 ? 1 - exponent : Math.min(6, significant - 1 - exponent);
}

/**
 * As `decimalsFor`, but keeps the decimals of the print before while they still show one or two significant digits:
 * a value that fluctuates then keeps its digits.
 */
export function steadyDecimals(uncertainty: number, before: number | undefined): number | undefined {
  const fresh = decimalsFor(uncertainty);
  if (fresh === undefined || before === undefined) return fresh;
  const shown = uncertainty * 10 ** before;
  return shown >= 1.2 && shown < 20 ? before : fresh;
}
