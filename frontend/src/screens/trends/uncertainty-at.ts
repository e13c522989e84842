/** How sure a point was at some moments, oldest first, in its unit of measure; null where it is not known. */
export interface UncertaintyTrack {
  /** s since 1970 */
  readonly seconds: readonly number[];
  readonly expanded: readonly (number | null)[];
}

/**
 * Between two moments of which it is known straight from one to the other; beyond the first and the last of them it holds as far as one moment
 * is from the next. Null elsewhere: a band is drawn only where something is known. @param at s since 1970
 */
export function uncertaintyAt({ expanded, seconds }: UncertaintyTrack, at: number): number | null {
  const right = seconds.findIndex((moment) => moment >= at);
  const [first, last] = [seconds[0], seconds.at(-1)];
  if (first === undefined || last === undefined) return null;
  const step = stepOf(seconds);
  if (right < 0) return at - last <= step ? (expanded.at(-1) ?? null) : null;
  if (seconds[right] === at || right === 0) return first - at <= step ? (expanded[right] ?? null) : null;
  const [before, after] = [expanded[right - 1] ?? null, expanded[right] ?? null];
  if (before === null || after === null) return null;
  const [from, to] = [seconds[right - 1] ?? at, seconds[right] ?? at];
  return before + ((after - before) * (at - from)) / (to - from);
}

/** Where there is one moment alone it holds so far. s */
const aloneSeconds = 60;

function stepOf(seconds: readonly number[]): number {
  const [first, last] = [seconds[0] ?? 0, seconds.at(-1) ?? 0];
  return seconds.length < 2 ? aloneSeconds : (last - first) / (seconds.length - 1);
}

/** Adds what is known of now, where it is the next moment; what was long before is not known by it. */
export function withNow(
  track: UncertaintyTrack,
  now: { readonly time: string | null; readonly expandedUncertainty: number | null } | undefined,
): UncertaintyTrack {
  const at = Date.parse(now?.time ?? '') / 1000;
  const last = track.seconds.at(-1);
  if (last === undefined || !(at > last) || at - last > 2 * stepOf(track.seconds)) return track;
  return {
    seconds: [...track.seconds, at],
    expanded: [...track.expanded, now?.expandedUncertainty ?? null],
  };
}
