/** Quantile by linear interpolation between order statistics (type 7 of Hyndman and Fan 1996); null of nothing. */
export function quantile(values: readonly number[], share: number): number | null {
  const ordered = [...values].sort((a, b) => a - b);
  const place = share * (ordered.length - 1);
  const low = ordered[Math.floor(place)];
  const high = ordered[Math.ceil(place)];
  return low === undefined || high === undefined ? null : low + (high - low) * (place - Math.floor(place));
}
