import type { Cell, LaneLine } from './lane';

/** Columns of several lines on one array of times. */
export interface Aligned {
  readonly seconds: number[];
  readonly columns: readonly {
    readonly min: Cell[];
    readonly mean: Cell[];
    readonly max: Cell[];
    readonly uncertainty: Cell[];
  }[];
}

/** Puts lines with times of their own on one array of times. Where another line's time stands, a line has nothing (undefined), which is no gap. */
export function alignLines(
  lines: readonly Pick<LaneLine, 'seconds' | 'min' | 'mean' | 'max' | 'uncertainty'>[],
): Aligned {
  const seconds = [...new Set(lines.flatMap((line) => line.seconds))].sort((one, other) => one - other);
  const placeOf = new Map(seconds.map((at, index) => [at, index]));
  const columns = lines.map((line) => {
    const spread = (column: readonly Cell[]): Cell[] => {
      const out: Cell[] = new Array<Cell>(seconds.length).fill(undefined);
      line.seconds.forEach((at, index) => {
        out[placeOf.get(at) ?? 0] = column[index];
      });
      return out;
    };
    const uncertainty = spread(line.uncertainty ?? []);
    return { min: spread(line.min), mean: spread(line.mean), max: spread(line.max), uncertainty };
  });
  return { seconds, columns };
}

/** Places of values with a gap, or the end, on both sides: a line alone would not show them. */
export function alonePlaces(column: readonly Cell[]): number[] {
  const places = column.flatMap((cell, index) => (cell === undefined ? [] : [{ cell, index }]));
  return places.flatMap(({ cell, index }, at) =>
    cell !== null && (places[at - 1]?.cell ?? null) === null && (places[at + 1]?.cell ?? null) === null ? [index] : [],
  );
}
