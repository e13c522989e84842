/** Numbers as print has them: true minus sign, thin space between thousands, digits asked for. */
const minus = '−';
const thinSpace = '\u202f';

export function formatNumber(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  const [whole = '0', fraction] = text.split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, thinSpace) : whole;
  const digits = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  const isZero = Number(text) === 0;
  return value < 0 && !isZero ? `${minus}${digits}` : digits;
}

/**
 * Decimals that an expanded uncertainty leaves meaning to: two significant digits of it where one would round it by
 * more than a quarter (it begins with 1 to 1.4), else one; GUM 7.2.6 asks for at most two. Never fewer than none, never more than six.
 */
export function decimalsFor(uncertainty: number): number | undefined {
  if (!Number.isFinite(uncertainty) || uncertainty <= 0) return undefined;
  const exponent = Math.floor(Math.log10(uncertainty));
  const leading = uncertainty / 10 ** exponent;
  const significant = leading < 1.495 ? 2 : 1;
  return Math.min(6, Math.max(0, significant - 1 - exponent));
}
