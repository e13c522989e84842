/** Time until a straight line meets a limit: (limit − now) ÷ slope, in the slope's unit of time (definition). Infinity where it moves away; 0 where it is past. */
export function timeToLimit(now: number, limit: number, slope: number, side: 'above' | 'below'): number {
  const left = side === 'above' ? limit - now : now - limit;
  if (left <= 0) return 0;
  const approach = side === 'above' ? slope : -slope;
  return approach > 0 ? left / approach : Infinity;
}
