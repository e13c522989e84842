/** Columns of small rows and the height of each, px. */
export interface RowLayout {
  readonly columns: number;
  readonly rowPx: number;
}

/** Heights that are tried, the best to read first; the last is as low as a finger or a pointer still meets one row alone. px */
const byHand = [40, 34, 28, 24] as const;
/** Where nobody points at anything. px */
const onWall = [240, 200, 168, 140, 120, 100, 84, 72, 60, 50, 40, 34, 28, 24, 20, 17, 14] as const;
/** Of few loops a row takes no more of the room than one in so many: larger letters say no more. */
const fewest = 5;
/** A column is at least so many times as wide as a row is high, so that its strip shows a margin. */
const widths = 7;
const phonePx = 480;
/** Between two columns. px */
export const columnGapPx = 16;

/**
 * So many columns that all rows are seen at once, as large as they may be; where that is not possible, as many columns as there is
 * room for.
 * @param width of all columns, px
 * @param height left for them in the window, px
 */
export function layOutRows(rows: number, width: number, height: number, wall = false): RowLayout {
  const heights = wall ? onWall.filter((px) => px <= Math.max(84, height / fewest)) : byHand;
  // On a phone all are never seen at once: what can be read goes before how many can be seen.
  if (!wall && width < phonePx) return { columns: 1, rowPx: 28 };
  for (const rowPx of heights) {
    const columns = Math.max(1, Math.ceil(rows / Math.max(1, Math.floor(height / rowPx))));
    if (columns <= mostColumns(width, rowPx)) return { columns, rowPx };
  }
  const rowPx = heights.at(-1) ?? 24;
  return { columns: mostColumns(width, rowPx), rowPx };
}

const mostColumns = (width: number, rowPx: number): number =>
  Math.max(1, Math.floor((width + columnGapPx) / (rowPx * widths + columnGapPx)));
