/** A second is cut in slices so that no step blocks for long. */
export const slicesPerSecond = 20;
export const sliceMs = 1000 / slicesPerSecond;

/**
 * After a longer gap the slices before this are left out: what no sample came for need not be judged second by
 * second, delays and staleness run on the tick time anyway, and the pipeline must not block for minutes.
 */
export const longestCatchUpMs = 10_000;

export interface DueSlices {
  /** Slices since 1970; from > to where none is due. */
  readonly from: number;
  readonly to: number;
  /** Slices left out before `from`. */
  readonly skipped: number;
}

/** Which slices are due at `nowMs`, when `last` was the last one that ran (NaN: none yet; only the present one is due). */
export function dueSlices(last: number, nowMs: number): DueSlices {
  const to = Math.floor(nowMs / sliceMs);
  if (Number.isNaN(last)) return { from: to, to, skipped: 0 };
  const earliest = to - longestCatchUpMs / sliceMs + 1;
  const skipped = Math.max(0, earliest - (last + 1));
  return { from: last + 1 + skipped, to, skipped };
}

/** The units of each slice: dealt out in turn, so that the slices differ by one unit at most. */
export function unitsBySlice(units: number): readonly Int32Array[] {
  return Array.from({ length: slicesPerSecond }, (_, slice) =>
    Int32Array.from(
      { length: Math.max(0, Math.ceil((units - slice) / slicesPerSecond)) },
      (__, i) => slice + i * slicesPerSecond,
    ),
  );
}
