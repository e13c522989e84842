import type { ClockKind } from '../sample/intake-context';

/** A second is cut in slices so that no step blocks for long. */
export const slicesPerSecond = 20;
export const sliceMs = 1000 / slicesPerSecond;

/**
 * After a longer gap the slices before this are left out: what no sample came for need not be judged second by
 * second, delays and staleness run on the tick time anyway, and the pipeline must not block for minutes.
 */
export const longestCatchUpMs = 10_000;

/** Ticks that are further apart than this come from a program, or a machine, that stood still. */
const stoodStillMs = 3000;

/** True where the clock went on without its ticks. The clock of a plant jumps by nature: it knows nothing of this program. */
export const stoodStill = (last: number, nowMs: number, clock: ClockKind): boolean =>
  clock === 'wall' && nowMs - last * sliceMs > stoodStillMs;

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

/** Slice of each unit: dealt out in turn, so that the slices differ by one unit at most. */
export const dealtSlices = (units: number): Uint8Array =>
  Uint8Array.from({ length: units }, (_, i) => i % slicesPerSecond);

/** Slice of each unit of a new site: who was there before keeps its own, so that its seconds stay whole; others fill up. */
export function keptSlices(before: Uint8Array, unitsBefore: Int32Array): Uint8Array {
  const load = new Uint32Array(slicesPerSecond);
  const kept = Uint8Array.from(unitsBefore, (was) => before[was] ?? 0);
  unitsBefore.forEach((was, unit) => {
    if (was >= 0) load[kept[unit] as number] = (load[kept[unit] as number] as number) + 1;
  });
  unitsBefore.forEach((was, unit) => {
    if (was >= 0) return;
    const emptiest = load.indexOf(Math.min(...load));
    kept[unit] = emptiest;
    load[emptiest] = (load[emptiest] as number) + 1;
  });
  return kept;
}

/** The units of each slice. */
export function unitsBySlice(sliceOf: Uint8Array): readonly Int32Array[] {
  const units: number[][] = Array.from({ length: slicesPerSecond }, () => []);
  sliceOf.forEach((slice, unit) => units[slice]?.push(unit));
  return units.map((some) => Int32Array.from(some));
}
