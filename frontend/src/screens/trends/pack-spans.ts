/** Something that lasts, s since 1970; null: from before what can be told, or it goes on. */
export interface Lasting {
  readonly from: number | null;
  readonly to: number | null;
}

export interface Placed<T> {
  readonly one: T;
  /** From 0. */
  readonly row: number;
  /** Ends as shares of the width, 0 to 1. */
  readonly left: number;
  readonly right: number;
  readonly beganBefore: boolean;
  readonly goesOn: boolean;
}

/**
 * Places what lasts in rows so that nothing covers anything, each at its time and wide enough to be hit. What is given first is placed first;
 * what finds no room is left over.
 * @param from @param to ends of the axis, s since 1970 @param leastShare of the width @param mostRows at least 1
 */
export function packSpans<T extends Lasting>(
  given: readonly T[],
  from: number,
  to: number,
  leastShare: number,
  mostRows: number,
): { readonly placed: readonly Placed<T>[]; readonly rows: number; readonly leftOver: readonly T[] } {
  const rows: { readonly left: number; readonly right: number }[][] = [];
  const placed: Placed<T>[] = [];
  const leftOver: T[] = [];
  const share = (seconds: number): number => Math.min(1, Math.max(0, (seconds - from) / (to - from)));
  for (const one of given) {
    const start = share(one.from ?? from);
    const right = Math.min(1, Math.max(share(one.to ?? to), start + leastShare));
    const left = Math.min(start, Math.max(0, right - leastShare));
    const free = rows.findIndex((row) => row.every((other) => other.right <= left || other.left >= right));
    const row = free >= 0 ? free : rows.length;
    if (row >= mostRows) {
      leftOver.push(one);
      continue;
    }
    (rows[row] ??= []).push({ left, right });
    const beganBefore = one.from === null || one.from < from;
    placed.push({ one, row, left, right, beganBefore, goesOn: one.to === null || one.to > to });
  }
  const byTime = [...placed].sort((a, b) => a.left - b.left || a.row - b.row);
  return { placed: byTime, rows: rows.length, leftOver };
}
